// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.compare.matrix.Column;
import org.loomwright.compare.matrix.Matrix;
import org.loomwright.compare.matrix.Pair;
import org.loomwright.compare.matrix.Row;
import org.loomwright.compare.matrix.Section;

/**
 * A matrix for a terminal. An element of which all drawings say the same is only named; a cell that says what the one
 * to its left says is an equals sign. Columns that do not fit go on below.
 */
public final class MatrixText {

    /** What a matrix of half a source is worth. */
    public static final String HALF_READ = FitPages.HALF_READ;

    private static final int MANY_COLUMNS = 6;

    private final Matrix matrix;
    private final Palette palette;
    private final int width;
    private final StringBuilder out = new StringBuilder();

    private MatrixText(Matrix matrix, Palette palette, int width) {
        this.matrix = matrix;
        this.palette = palette;
        this.width = width;
    }

    /**
     * The whole page.
     *
     * @param sections        what is shown
     * @param onlyDifferences true to leave out every row in which all drawings say the same
     * @param width           columns of the terminal that it may take
     */
    public static String of(Matrix matrix, Set<Section> sections, boolean onlyDifferences, Palette palette,
            int width) {
        MatrixText text = new MatrixText(matrix, palette, width);
        text.head();
        List<Row> all = matrix.rows(sections, false);
        Map<Section, List<Row>> shown = new LinkedHashMap<>();
        Map<Section, List<String>> folded = new LinkedHashMap<>();
        for (Section section : Section.values()) {
            List<Row> rows = new ArrayList<>();
            List<String> equal = new ArrayList<>();
            all.stream().filter(row -> row.section() == section)
                    .collect(Collectors.groupingBy(Row::subject, LinkedHashMap::new, Collectors.toList())).values()
                    .forEach(element -> {
                        if (element.stream().allMatch(Row::isEqual)) {
                            equal.add(name(element.getFirst()));
                        } else {
                            element.stream().filter(row -> !onlyDifferences || !row.isEqual()).forEach(rows::add);
                        }
                    });
            shown.put(section, rows);
            folded.put(section, equal);
        }
        MatrixBlocks blocks = new MatrixBlocks(matrix, shown.values().stream().flatMap(List::stream).toList(), palette,
                width);
        shown.forEach((section, rows) -> {
            blocks.append(section, text.out);
            text.equal(section, folded.get(section), rows.isEmpty());
        });
        text.legend(all, blocks);
        text.pairs();
        return text.out.toString();
    }

    private void head() {
        int names = matrix.columns().stream().mapToInt(column -> Cells.width(column.name())).max().orElse(0);
        out.append(palette.paint(Tone.HEAD, Cells.printable(matrix.name()) + ": " + matrix.columns().size()
                + " side by side")).append('\n');
        for (Column column : matrix.columns()) {
            List<String> words = new ArrayList<>();
            words.add(column.title());
            words.add(column.vehicles());
            words.add(column.sheets().isEmpty() ? "" : "sheet " + column.sheets());
            words.removeIf(String::isEmpty);
            hang(Cells.left(Cells.printable(column.name()), names) + "  ", String.join("; ", words));
        }
        out.append('\n');
    }

    /** Text behind a lead; its further lines begin below its first word. */
    private void hang(String lead, String text) {
        int indent = Cells.width(lead);
        String before = lead;
        for (String line : MatrixBlocks.wrapped(Cells.printable(text), "", Math.max(20, width - indent))) {
            out.append((before + line).stripTrailing()).append('\n');
            before = " ".repeat(indent);
        }
    }

    private static String name(Row first) {
        return MatrixWords.names(first) && !first.cells().getFirst().words().equals(first.title())
                ? first.title() + " (" + MatrixWords.of(first.cells().getFirst()) + ")"
                : first.title();
    }

    private void equal(Section section, List<String> names, boolean alone) {
        if (!names.isEmpty()) {
            hang((alone ? section.words() + ", " : "") + "equal in all: ", String.join(", ", names));
        }
        if (!names.isEmpty() || !alone) {
            out.append('\n');
        }
    }

    private void legend(List<Row> all, MatrixBlocks blocks) {
        long equal = all.stream().filter(Row::isEqual).count();
        out.append(equal).append(" of ").append(all.size()).append(all.size() == 1 ? " row is" : " rows are")
                .append(" equal in all\n");
        List<String> words = blocks.legend();
        if (!words.isEmpty()) {
            hang("", String.join("; ", words));
        }
    }

    private void pairs() {
        List<Pair> shown = matrix.pairs();
        boolean some = matrix.columns().size() > MANY_COLUMNS;
        if (some) {
            shown = shown.stream().filter(pair -> pair.right() == pair.left() + 1).toList();
        }
        out.append('\n').append(palette.paint(Tone.HEAD, some ? "what differs from each to the next"
                : "what differs between each two")).append('\n');
        List<String> leads = shown.stream().map(pair -> matrix.columns().get(pair.left()).name() + " - "
                + matrix.columns().get(pair.right()).name()).map(Cells::printable).toList();
        int longest = leads.stream().mapToInt(Cells::width).max().orElse(0);
        for (int i = 0; i < shown.size(); i++) {
            String largest = MatrixWords.largest(matrix, shown.get(i));
            hang(Cells.left(leads.get(i), longest) + "  ", MatrixWords.differing(shown.get(i))
                    + (largest.isEmpty() ? "" : "; " + largest));
        }
    }
}
