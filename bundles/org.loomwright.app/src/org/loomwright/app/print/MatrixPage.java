// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.loomwright.compare.matrix.Cell;
import org.loomwright.compare.matrix.Column;
import org.loomwright.compare.matrix.Matrix;
import org.loomwright.compare.matrix.Pair;
import org.loomwright.compare.matrix.Row;
import org.loomwright.compare.matrix.Section;

/**
 * Matrices as one page of HTML without scripts and without anything from elsewhere, for screen and paper. Neighbours
 * that say the same share one cell. What differs is marked by words and by shape, and by colour besides.
 */
public final class MatrixPage {

    private static final String STYLE = """
            :root { color-scheme: light dark; --line: #8a8f98; --head: #e8ebef; --odd: #fff1c9; --faint: #5b616b;
              --back: #ffffff; --ink: #16191d; }
            @media (prefers-color-scheme: dark) { :root { --line: #6b717b; --head: #2a2f37; --odd: #4a3d10;
              --faint: #a4abb6; --back: #16191d; --ink: #e8ebef; } }
            body { margin: 1.5rem; font: 0.9rem/1.4 system-ui, sans-serif; color: var(--ink); background: var(--back); }
            table { border-collapse: separate; border-spacing: 0; margin: 0 0 2rem; }
            caption { text-align: left; font-weight: 600; font-size: 1.1rem; padding: 0.5rem 0; }
            th, td { border: solid var(--line); border-width: 0 1px 1px 0; padding: 0.2rem 0.6rem; text-align: left;
              vertical-align: top; font-variant-numeric: tabular-nums; }
            thead th { position: sticky; top: 0; background: var(--head); border-top-width: 1px; }
            tbody th { font-weight: 400; background: var(--back); }
            th:first-child { border-left-width: 1px; }
            tbody th.element { font-weight: 600; background: var(--head); border-left-width: 1px; }
            tr.equal td { color: var(--faint); }
            td.odd { background: var(--odd); outline: 2px solid var(--ink); outline-offset: -2px; }
            td.odd small { display: block; }
            @media print { body { margin: 0; font-size: 8pt; } thead { display: table-header-group; }
              thead th { position: static; } tr { break-inside: avoid; } }
            """;

    private final StringBuilder out = new StringBuilder();

    private MatrixPage() {
    }

    /** The text of the page. */
    public static String of(String project, List<Matrix> all, Set<Section> sections, boolean onlyDifferences) {
        MatrixPage page = new MatrixPage();
        String title = escaped(project) + ": side by side";
        page.out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<title>").append(title)
                .append("</title>\n<meta name=\"viewport\" content=\"width=device-width\"/>\n<style>\n")
                .append(STYLE).append("</style>\n</head>\n<body>\n<h1>").append(title).append("</h1>\n");
        for (Matrix matrix : all) {
            page.matrix(matrix, sections, onlyDifferences);
        }
        return page.out.append("</body>\n</html>\n").toString();
    }

    private void matrix(Matrix matrix, Set<Section> sections, boolean onlyDifferences) {
        out.append("<h2>").append(escaped(matrix.name())).append("</h2>\n");
        drawings(matrix);
        List<Row> rows = matrix.rows(sections, onlyDifferences);
        for (Section section : Section.values()) {
            List<Row> own = rows.stream().filter(row -> row.section() == section).toList();
            if (!own.isEmpty()) {
                section(matrix, section, own);
            }
        }
        long all = matrix.rows(sections, false).size();
        long equal = matrix.rows(sections, false).stream().filter(Row::isEqual).count();
        out.append("<p>").append(equal).append(" of ").append(all).append(" rows are equal in all")
                .append(onlyDifferences ? " and are left out" : "").append(". Lengths are in millimetres, with what")
                .append(" the drawing writes in brackets; <i>path</i> is a length along the path, without what")
                .append(" plugging in takes.</p>\n");
        pairs(matrix);
    }

    private void drawings(Matrix matrix) {
        head("The drawings", List.of("drawing", "title", "vehicles", "sheet"));
        for (Column column : matrix.columns()) {
            out.append("<tr><th scope=\"row\">").append(escaped(column.name())).append("</th>");
            for (String text : List.of(column.title(), column.vehicles().isEmpty() ? "all" : column.vehicles(),
                    column.sheets())) {
                out.append("<td>").append(escaped(text)).append("</td>");
            }
            out.append("</tr>\n");
        }
        foot();
    }

    private void head(String caption, List<String> columns) {
        out.append("<table>\n<caption>").append(escaped(caption)).append("</caption>\n<thead>\n<tr>");
        columns.forEach(column -> out.append("<th scope=\"col\">").append(escaped(column)).append("</th>"));
        out.append("</tr>\n</thead>\n<tbody>\n");
    }

    private void foot() {
        out.append("</tbody>\n</table>\n");
    }

    private void section(Matrix matrix, Section section, List<Row> rows) {
        List<String> columns = new ArrayList<>(List.of(section.words()));
        matrix.columns().forEach(column -> columns.add(column.name()));
        head(matrix.name() + ": " + section.words(), columns);
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            if (i == 0 || rows.get(i - 1).subject() != row.subject()) {
                out.append(i == 0 ? "" : "</tbody>\n<tbody>\n")
                        .append("<tr><th class=\"element\" scope=\"rowgroup\" colspan=\"").append(columns.size())
                        .append("\">").append(escaped(row.title())).append("</th></tr>\n");
            }
            out.append(row.isEqual() ? "<tr class=\"equal\">" : "<tr>").append("<th scope=\"row\">")
                    .append(escaped(row.part().isEmpty() ? row.fact() : row.part() + ", " + row.fact()))
                    .append("</th>");
            cells(row);
            out.append("</tr>\n");
        }
        foot();
    }

    /** Neighbours that say the same share one cell; absent ones too. */
    private void cells(Row row) {
        int odd = row.outlier().orElse(-1);
        for (int first = 0; first < row.cells().size(); ) {
            Cell cell = row.cells().get(first);
            int end = first + 1;
            while (end < row.cells().size() && row.cells().get(end).says(cell)) {
                end++;
            }
            out.append(first == odd ? "<td class=\"odd\"" : "<td");
            out.append(end - first > 1 ? " colspan=\"" + (end - first) + "\">" : ">")
                    .append(cell.isAbsent() ? "<span aria-label=\"not there\">\u2013</span>"
                            : escaped(MatrixWords.of(cell)))
                    .append(first == odd ? "<small>the only one that differs</small>" : "").append("</td>");
            first = end;
        }
    }

    private void pairs(Matrix matrix) {
        head(matrix.name() + ": what differs between each two", List.of("between", "and", "differ",
                "largest difference of a length"));
        for (Pair pair : matrix.pairs()) {
            out.append("<tr><th scope=\"row\">").append(escaped(matrix.columns().get(pair.left()).name()))
                    .append("</th>");
            for (String text : List.of(matrix.columns().get(pair.right()).name(), MatrixWords.differing(pair),
                    MatrixWords.largest(matrix, pair))) {
                out.append("<td>").append(escaped(text)).append("</td>");
            }
            out.append("</tr>\n");
        }
        foot();
    }

    static String escaped(String text) {
        return Cells.printable(text).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
