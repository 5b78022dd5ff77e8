// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.loomwright.app.sheet.Csv;
import org.loomwright.app.sheet.Table;
import org.loomwright.compare.matrix.Cell;
import org.loomwright.compare.matrix.Column;
import org.loomwright.compare.matrix.Matrix;
import org.loomwright.compare.matrix.Row;
import org.loomwright.compare.matrix.Section;
import org.loomwright.compare.matrix.Value;

/**
 * A matrix for a spreadsheet: nothing folded, every cell filled. A length has two rows, one in millimetres and one as
 * it is written; the first one is empty where no single length is known.
 */
public final class MatrixCsv {

    private MatrixCsv() {
    }

    /** The text of the file, as RFC 4180 has it. */
    public static String text(Matrix matrix, Set<Section> sections, boolean onlyDifferences) {
        List<String> headers = new ArrayList<>(List.of("section", "element", "part", "fact"));
        matrix.columns().stream().map(Column::name).forEach(headers::add);
        headers.addAll(List.of("differs", "the only one that differs"));
        List<List<String>> rows = new ArrayList<>();
        for (Row row : matrix.rows(sections, onlyDifferences)) {
            boolean lengths = row.cells().stream().flatMap(cell -> cell.values().stream())
                    .anyMatch(value -> value.length().isPresent());
            if (lengths) {
                rows.add(row(matrix, row, row.fact() + " mm", cell -> cell.length().map(Millimetres::exact)
                        .orElse("")));
            }
            rows.add(row(matrix, row, lengths ? row.fact() + " as written" : row.fact(), MatrixCsv::words));
        }
        return new String(Csv.bytes(new Table(matrix.name() + ".csv", headers, rows)), StandardCharsets.UTF_8);
    }

    private static List<String> row(Matrix matrix, Row row, String fact, Function<Cell, String> words) {
        List<String> cells = new ArrayList<>(List.of(row.section().words(), row.title(), row.part(), fact));
        row.cells().stream().map(words).forEach(cells::add);
        cells.add(row.isEqual() ? "no" : "yes");
        cells.add(row.outlier().isPresent() ? matrix.columns().get(row.outlier().getAsInt()).name() : "");
        return cells;
    }

    private static String words(Cell cell) {
        return cell.values().stream().map(Value::words).collect(Collectors.joining(" / "));
    }
}
