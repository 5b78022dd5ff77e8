// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.loomwright.compare.matrix.Cell;
import org.loomwright.compare.matrix.Matrix;
import org.loomwright.compare.matrix.Pair;
import org.loomwright.compare.matrix.Row;
import org.loomwright.compare.matrix.Section;
import org.loomwright.compare.matrix.Value;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Unit;

/** Words for what stands in a matrix, common to all its forms. */
final class MatrixWords {

    private MatrixWords() {
    }

    /** {@code 190.5 (7 1/2 in)}, {@code 130.0 path}; a value that is no length as it is written. */
    static String of(Value value) {
        if (value.length().isEmpty()) {
            return value.words();
        }
        String figure = figure(value.length().get()) + behind(value);
        return value.when().isEmpty() ? figure : figure + " when " + value.when();
    }

    /** What stands behind the figure of a length: {@code  (7 1/2 in)}, {@code  path}; empty for plain millimetres. */
    static String behind(Value value) {
        int unit = value.written().indexOf(" mm");
        boolean metric = unit >= 0 && !value.written().startsWith("+");
        return metric ? value.written().substring(unit + " mm".length()) : " (" + value.written() + ")";
    }

    /** All values of a cell in one line. */
    static String of(Cell cell) {
        return cell.isAbsent() ? "-" : cell.values().stream().map(MatrixWords::of).collect(Collectors.joining(" / "));
    }

    /** {@code 190.5}: millimetres. */
    static String figure(Length length) {
        return length.show(Unit.MM, 1).replace(" mm", "");
    }

    /** What a row is about, alone: {@code Dipped beam, J1:1 - S12, size}. */
    static String subject(Row row) {
        return row.title() + (row.part().isEmpty() ? "" : ", " + row.part()) + ", " + row.fact();
    }

    /** {@code 12 circuits, 3 connectors, 9 places, 21 lengths}; {@code nothing}. */
    static String differing(Pair pair) {
        if (pair.isEqual()) {
            return "nothing";
        }
        String elements = Arrays.stream(Section.values()).filter(each -> pair.elements().get(each) > 0)
                .map(each -> each.count(pair.elements().get(each))).collect(Collectors.joining(", "));
        return elements + (pair.lengths() == 0 ? ""
                : ", " + pair.lengths() + (pair.lengths() == 1 ? " length" : " lengths"));
    }

    /** {@code at most 43.2 mm: Left headlamp (headlampLeft), from datum, 977.9 and 1021.1}; empty for none. */
    static String largest(Matrix matrix, Pair pair) {
        return pair.largest().map(largest -> {
            Row row = matrix.rows().get(largest.row());
            return "at most " + figure(largest.difference().abs()) + " mm: " + subject(row) + ", "
                    + of(row.cells().get(pair.left())) + " and " + of(row.cells().get(pair.right()));
        }).orElse("");
    }

    /** What stands before the rows of an element whose first row names it. */
    static boolean names(Row row) {
        return row.part().isEmpty() && (row.fact().equals("number") || row.fact().equals("name"));
    }
}
