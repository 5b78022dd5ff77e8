// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.write;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.sheet.Csv;
import org.loomwright.app.sheet.Table;

/**
 * A folder that lists are written to.
 *
 * @param path  the folder, which need not exist
 * @param shown the folder as the caller named it
 */
public record SheetFolder(Path path, String shown) {

    /**
     * Names a folder.
     *
     * @param base the folder that relative paths start from
     * @throws BadCall if something that is no folder is in its place
     */
    public static SheetFolder at(Path base, String name) throws BadCall {
        try {
            Path path = base.resolve(name);
            if (name.isEmpty() || Files.exists(path) && !Files.isDirectory(path)) {
                throw new BadCall("cannot write to " + (name.isEmpty() ? "''" : name) + ": it is not a folder");
            }
            return new SheetFolder(path, name);
        } catch (InvalidPathException e) {
            throw new BadCall("cannot write to " + name + ": it is not a path");
        }
    }

    /**
     * Writes all lists or none.
     *
     * @throws BadCall if the folder cannot be written to
     */
    public void write(List<Table> tables) throws BadCall {
        WholeFiles files = new WholeFiles();
        for (Table table : tables) {
            files.add(path.resolve(table.name()), Csv.bytes(table));
        }
        files.write();
    }
}
