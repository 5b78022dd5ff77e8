// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.List;
import org.loomwright.app.sheet.Table;

/** What was written where. */
public final class SheetsText {

    private SheetsText() {
    }

    /** One line for the folder and one for each file. */
    public static String text(String folder, List<Table> tables) {
        StringBuilder text = new StringBuilder("wrote ").append(tables.size())
                .append(tables.size() == 1 ? " list to " : " lists to ").append(Cells.printable(folder)).append('\n');
        int width = tables.stream().mapToInt(table -> Cells.width(table.name())).max().orElse(0);
        for (Table table : tables) {
            text.append("  ").append(Cells.left(table.name(), width)).append("  ").append(table.rows().size())
                    .append(table.rows().size() == 1 ? " row\n" : " rows\n");
        }
        return text.toString();
    }

    /** The same as JSON; {@code docs/cli-json.md} describes it. */
    public static String json(String folder, List<Table> tables) {
        return Json.object(json -> {
            json.name("schema").value(CheckJson.SCHEMA);
            json.name("command").value("sheets");
            json.name("folder").value(folder);
            json.name("files").beginArray();
            for (Table table : tables) {
                json.beginObject();
                json.name("file").value(table.name());
                json.name("rows").value(table.rows().size());
                json.endObject();
            }
            json.endArray();
        });
    }
}
