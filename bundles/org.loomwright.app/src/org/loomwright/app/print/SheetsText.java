// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.List;
import org.loomwright.sheets.SheetFile;

/** What was written where. */
public final class SheetsText {

    private SheetsText() {
    }

    /**
     * One line for the folder and one for each file.
     *
     * @param gone how many files of an earlier set are gone
     */
    public static String text(String folder, List<SheetFile> files, int gone) {
        StringBuilder text = new StringBuilder("wrote ").append(files.size())
                .append(files.size() == 1 ? " file to " : " files to ").append(Cells.printable(folder));
        if (gone > 0) {
            text.append(", in place of an earlier set; ").append(gone).append(gone == 1 ? " file of it is gone"
                    : " files of it are gone");
        }
        text.append('\n');
        int width = files.stream().mapToInt(file -> Cells.width(file.name())).max().orElse(0);
        for (SheetFile file : files) {
            text.append("  ").append(Cells.left(file.name(), width));
            if (file.pages() > 0) {
                text.append("  ").append(file.pages()).append(file.pages() == 1 ? " page" : " pages");
            }
            text.append('\n');
        }
        return text.toString();
    }

    /** The same as JSON; {@code docs/cli-json.md} describes it. */
    public static String json(String folder, List<SheetFile> files) {
        return Json.object(json -> {
            json.name("schema").value(CheckJson.SCHEMA);
            json.name("command").value("sheets");
            json.name("folder").value(folder);
            json.name("files").beginArray();
            for (SheetFile file : files) {
                json.beginObject();
                json.name("file").value(file.name());
                json.name("pages").value(file.pages());
                json.name("bytes").value(file.bytes().length);
                json.endObject();
            }
            json.endArray();
        });
    }
}
