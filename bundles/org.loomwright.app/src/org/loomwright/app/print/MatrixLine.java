// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.compare.matrix.Matrix;
import org.loomwright.compare.matrix.Row;
import org.loomwright.compare.matrix.Section;

/**
 * A row as a terminal shows it.
 *
 * @param row           the row
 * @param beginsElement true for the first shown row of its element
 * @param beginsPart    true for the first shown row of its piece of the element
 * @param element       the columns that have the element
 * @param part          the columns that have the piece
 */
record MatrixLine(Row row, boolean beginsElement, boolean beginsPart, BitSet element, BitSet part) {

    private record Key(Section section, int subject, String part) {

        static Key element(Row row) {
            return new Key(row.section(), row.subject(), "");
        }

        static Key part(Row row) {
            return new Key(row.section(), row.subject(), row.part());
        }
    }

    /** The lines of some rows of a matrix. */
    static List<MatrixLine> of(Matrix matrix, List<Row> rows) {
        Map<Key, BitSet> elements = new HashMap<>();
        Map<Key, BitSet> parts = new HashMap<>();
        for (Row row : matrix.rows()) {
            BitSet there = new BitSet();
            for (int i = 0; i < row.cells().size(); i++) {
                there.set(i, !row.cells().get(i).isAbsent());
            }
            elements.computeIfAbsent(Key.element(row), key -> new BitSet()).or(there);
            parts.computeIfAbsent(Key.part(row), key -> new BitSet()).or(there);
        }
        List<MatrixLine> lines = new ArrayList<>();
        Row before = null;
        for (Row row : rows) {
            boolean begins = before == null || !Key.element(before).equals(Key.element(row));
            lines.add(new MatrixLine(row, begins, begins || !Key.part(before).equals(Key.part(row)),
                    elements.get(Key.element(row)), parts.get(Key.part(row))));
            before = row;
        }
        return lines;
    }

    /** Nothing needs to be said: that the drawing does not have the thing stands in a line above. */
    boolean isBlank(int column) {
        return row.cells().get(column).isAbsent() && (!beginsElement && !element.get(column)
                || !beginsPart && !part.get(column));
    }

    /** Whether the column is marked as the only one that differs; a thing that it alone has is marked once. */
    boolean isOdd(int column) {
        boolean toldAbove = !beginsElement && isAlone(element, column)
                || !beginsPart && isAlone(part, column);
        return row.outlier().orElse(-1) == column && !toldAbove;
    }

    /** It alone has the thing, or it alone does not. */
    private boolean isAlone(BitSet columns, int column) {
        int number = columns.cardinality();
        return columns.get(column) ? number == 1 : number == row.cells().size() - 1;
    }

    /** What stands before the cells: where an element begins that its row does not name, its title, and the fact. */
    List<String> labels() {
        String title = Cells.printable(row.title());
        if (beginsElement && MatrixWords.names(row)) {
            return List.of(title);
        }
        String fact = "  " + row.fact();
        if (!row.part().isEmpty()) {
            fact = beginsPart ? "  " + Cells.printable(row.part()) + (row.fact().equals("size") ? ""
                    : " " + row.fact()) : "    " + row.fact();
        }
        return beginsElement ? List.of(title, fact) : List.of(fact);
    }
}
