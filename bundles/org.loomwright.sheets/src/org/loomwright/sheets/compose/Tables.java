// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.List;
import java.util.stream.Stream;
import org.loomwright.sheets.document.Block.Cell;
import org.loomwright.sheets.document.Block.Column;
import org.loomwright.sheets.document.Block.Row;

/** Short forms for tables. */
final class Tables {

    private static final String FIGURES = "#";

    private Tables() {
    }

    /** Columns by their headings; a heading that begins with # is that of figures. */
    static List<Column> columns(String... headings) {
        return Stream.of(headings).map(each -> each.startsWith(FIGURES) ? Column.figures(each.substring(1))
                : Column.of(each)).toList();
    }

    /** A row that names a group. */
    static Row group(String text, int columns) {
        return new Row(Stream.concat(Stream.of(Cell.of(text)), Stream.generate(() -> Cell.of("")).limit(columns - 1L))
                .toList(), true);
    }

    /** A row of cells. */
    static Row row(Cell... cells) {
        return new Row(List.of(cells), false);
    }
}
