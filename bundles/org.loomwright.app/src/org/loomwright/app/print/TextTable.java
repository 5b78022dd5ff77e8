// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.List;
import java.util.Optional;
import org.loomwright.app.print.Palette.Tone;

/**
 * A table for a terminal: words and figures at the right of their columns, marks in a narrow column of their own behind
 * the figures. A table that is too wide goes on below, with its first column again.
 */
final class TextTable {

    private static final String GAP = "  ";

    private final List<String> heads;
    private final List<Column> columns;
    private final Palette palette;

    /**
     * @param heads   the first column, with its heading
     * @param columns the others
     */
    TextTable(List<String> heads, List<Column> columns, Palette palette) {
        this.heads = heads;
        this.columns = columns;
        this.palette = palette;
    }

    /**
     * A cell.
     *
     * @param text what stands in it
     * @param mark what stands behind a figure; empty for none
     * @param figure true for a figure, which keeps room for marks behind it
     * @param tone how it is set off
     */
    record Cell(String text, String mark, boolean figure, Optional<Tone> tone) {

        static Cell word(String text) {
            return new Cell(text, "", false, Optional.empty());
        }
    }

    /** A column with its heading; as many cells as there are heads below the first. */
    record Column(String heading, List<Cell> cells) {

        private int marks() {
            return cells.stream().mapToInt(cell -> cell.mark().length()).max().orElse(0);
        }

        private int width() {
            int behind = marks() > 0 ? marks() + 1 : 0;
            return Math.max(Cells.width(heading), cells.stream()
                    .mapToInt(cell -> Cells.width(cell.text()) + (cell.figure() ? behind : 0)).max().orElse(0));
        }
    }

    /** Appends the table, not wider than some columns where that is possible. */
    void append(int width, StringBuilder out) {
        int lead = heads.stream().mapToInt(Cells::width).max().orElse(0);
        int first = 0;
        while (first < columns.size()) {
            int end = first;
            int used = lead;
            while (end < columns.size() && (end == first || used + GAP.length() + columns.get(end).width() <= width)) {
                used += GAP.length() + columns.get(end).width();
                end++;
            }
            block(lead, columns.subList(first, end), out);
            first = end;
            out.append(first < columns.size() ? "\n" : "");
        }
    }

    private void block(int lead, List<Column> shown, StringBuilder out) {
        for (int line = 0; line < heads.size(); line++) {
            StringBuilder text = new StringBuilder(Cells.left(heads.get(line), lead));
            for (Column column : shown) {
                text.append(GAP).append(line == 0 ? Cells.right(column.heading(), column.width())
                        : cell(column.cells().get(line - 1), column));
            }
            String whole = text.toString().stripTrailing();
            out.append(line == 0 ? palette.paint(Tone.HEAD, whole) : whole).append('\n');
        }
    }

    private String cell(Cell cell, Column column) {
        String behind = cell.figure() && column.marks() > 0 ? " " + Cells.left(cell.mark(), column.marks()) : "";
        String blank = " ".repeat(Math.max(0, column.width() - Cells.width(cell.text()) - behind.length()));
        String shown = cell.text() + behind;
        return blank + cell.tone().map(tone -> palette.paint(tone, shown)).orElse(shown);
    }
}
