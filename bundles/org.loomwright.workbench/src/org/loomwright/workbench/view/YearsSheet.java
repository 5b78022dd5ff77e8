// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.compare.matrix.Cell;
import org.loomwright.compare.matrix.Column;
import org.loomwright.compare.matrix.Matrix;
import org.loomwright.compare.matrix.Row;
import org.loomwright.compare.matrix.Section;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.workbench.focus.Choice;

/**
 * Drawings side by side for the chosen vehicles.
 *
 * @param names  what can be shown: the positions that several drawings fill
 * @param name   what is shown; empty for none
 * @param heads  the drawings
 * @param tips   for each drawing its title and vehicles
 * @param spans  for each drawing where it is declared
 * @param lines  the facts
 * @param words  how much there is
 */
public record YearsSheet(List<String> names, String name, List<String> heads, List<String> tips, List<Span> spans,
        List<Line> lines, String words) {

    /** The most drawings of a position that are laid side by side: each is held to each. */
    private static final int MOST = 200;

    public YearsSheet {
        names = List.copyOf(names);
        heads = List.copyOf(heads);
        tips = List.copyOf(tips);
        spans = List.copyOf(spans);
        lines = List.copyOf(lines);
    }

    /**
     * One fact.
     *
     * @param title   what it is about
     * @param cells   what each drawing says; what differs from most has {@code ≠} before it
     * @param details the same at length
     */
    public record Line(String title, List<String> cells, List<String> details) {

        public Line {
            cells = List.copyOf(cells);
            details = List.copyOf(details);
        }
    }

    /** Only words, where so many drawings fill one position that holding each to each would take all memory. */
    static Optional<YearsSheet> tooMany(Project project) {
        return project.drawings().stream().collect(Collectors.groupingBy(view -> view.platform().name() + "\n"
                        + view.wiring().position().map(Object::toString).orElse(""), Collectors.counting()))
                .values().stream().max(Long::compare).filter(most -> most > MOST)
                .map(most -> new YearsSheet(List.of(), "", List.of(), List.of(), List.of(), List.of(), most
                        + " drawings fill one position; up to " + MOST + " can stand side by side here."));
    }

    static YearsSheet of(List<Matrix> all, String wanted, Set<Section> sections, boolean onlyDifferences,
            Choice choice, Project project) {
        List<String> names = all.stream().map(Matrix::name).toList();
        Optional<Matrix> found = all.stream().filter(each -> each.name().equals(wanted)).findFirst()
                .or(() -> all.stream().findFirst());
        if (found.isEmpty()) {
            return new YearsSheet(names, "", List.of(), List.of(), List.of(), List.of(),
                    "No two drawings of this project fill one position, so nothing stands side by side.");
        }
        Matrix matrix = found.get();
        List<Integer> columns = new ArrayList<>();
        for (int i = 0; i < matrix.columns().size(); i++) {
            Optional<WiringView> drawing = project.wiring(matrix.columns().get(i).name());
            if (drawing.isEmpty() || choice.touches(drawing.get().when(), project)) {
                columns.add(i);
            }
        }
        List<Row> rows = matrix.rows(sections, onlyDifferences);
        List<Column> shown = columns.stream().map(matrix.columns()::get).toList();
        return new YearsSheet(names, matrix.name(), shown.stream().map(Column::name).toList(),
                shown.stream().map(YearsSheet::tip).toList(),
                shown.stream().map(each -> project.wiring(each.name()).map(view -> view.wiring().name().span())
                        .orElse(Span.NONE)).toList(),
                rows.stream().map(row -> line(row, columns)).toList(),
                rows.size() + (onlyDifferences ? " differing facts" : " facts") + " of " + shown.size()
                + " drawings that fill " + matrix.name() + ", for " + choice.words()
                + ". \u2260 marks what differs from most.");
    }

    private static String tip(Column column) {
        return column.title() + (column.vehicles().isEmpty() ? "" : ", " + column.vehicles())
                + (column.sheets().isEmpty() ? "" : ", " + column.sheets());
    }

    private static Line line(Row row, List<Integer> columns) {
        List<Integer> groups = row.groups();
        int[] sizes = new int[row.cells().size()];
        columns.forEach(each -> sizes[groups.get(each)]++);
        int most = 0;
        for (int i = 1; i < sizes.length; i++) {
            most = sizes[i] > sizes[most] ? i : most;
        }
        List<String> cells = new ArrayList<>();
        List<String> details = new ArrayList<>();
        String title = row.title() + (row.part().isEmpty() ? "" : ", " + row.part()) + ", " + row.fact();
        for (int column : columns) {
            Cell cell = row.cells().get(column);
            String words = cell.isAbsent() ? "-" : cell.words();
            cells.add(groups.get(column) == most ? words : "\u2260 " + words);
            details.add(title + ": " + (cell.isAbsent() ? "the drawing does not have it" : words));
        }
        return new Line(title, cells, details);
    }
}
