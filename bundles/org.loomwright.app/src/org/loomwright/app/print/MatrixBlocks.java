// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.compare.matrix.Cell;
import org.loomwright.compare.matrix.Matrix;
import org.loomwright.compare.matrix.Row;
import org.loomwright.compare.matrix.Section;
import org.loomwright.compare.matrix.Value;

/**
 * The tables of a matrix on a terminal: the columns are shared out into blocks that fit, the same for all sections, so
 * that a drawing stands at the same distance from the left throughout.
 */
final class MatrixBlocks {

    private static final String GAP = "  ";
    private static final String MARK = " *";
    private static final int WIDEST_CELL = 18;
    private static final int WIDEST_LABEL = 30;

    private final Matrix matrix;
    private final Palette palette;
    private final Map<Section, List<MatrixLine>> lines = new EnumMap<>(Section.class);
    private final int label;
    private final int[] figures;
    private final List<Block> blocks = new ArrayList<>();
    private boolean equalSeen;
    private boolean oddSeen;
    private boolean absentSeen;
    private boolean lengthSeen;
    private boolean pathSeen;
    private boolean countedSeen;

    /** Some columns, with their widths. */
    private record Block(int first, List<Integer> widths) {
    }

    MatrixBlocks(Matrix matrix, List<Row> rows, Palette palette, int width) {
        this.matrix = matrix;
        this.palette = palette;
        List<MatrixLine> all = MatrixLine.of(matrix, rows);
        all.forEach(line -> lines.computeIfAbsent(line.row().section(), key -> new ArrayList<>()).add(line));
        figures = IntStream.range(0, matrix.columns().size()).map(column -> rows.stream()
                .flatMap(row -> row.cells().get(column).values().stream()).filter(value -> value.length().isPresent())
                .mapToInt(value -> MatrixWords.figure(value.length().get()).length()).max().orElse(0)).toArray();
        label = Math.min(WIDEST_LABEL, Math.max(Section.CONNECTORS.words().length(),
                all.stream().mapToInt(line -> Cells.width(line.labels().getLast())).max().orElse(0)));
        for (int first = 0; first < matrix.columns().size(); first += blocks.getLast().widths().size()) {
            List<Integer> widths = new ArrayList<>();
            int used = label;
            for (int column = first; column < matrix.columns().size(); column++) {
                int own = width(all, column, first);
                if (column > first && used + GAP.length() + own > width) {
                    break;
                }
                widths.add(own);
                used += GAP.length() + own;
            }
            blocks.add(new Block(first, widths));
        }
    }

    private int width(List<MatrixLine> all, int column, int first) {
        return Math.max(Cells.width(Cells.printable(matrix.columns().get(column).name())), all.stream()
                .flatMap(line -> cell(line, column, first).stream()).mapToInt(Cells::width).max().orElse(0));
    }

    /** Appends one section, block by block; nothing for a section without rows. */
    void append(Section section, StringBuilder out) {
        List<MatrixLine> own = lines.getOrDefault(section, List.of());
        for (Block block : own.isEmpty() ? List.<Block>of() : blocks) {
            out.append(block.first() > 0 ? "\n" : "");
            StringBuilder heading = new StringBuilder(Cells.left(section.words(), label));
            for (int i = 0; i < block.widths().size(); i++) {
                heading.append(GAP).append(Cells.left(
                        Cells.printable(matrix.columns().get(block.first() + i).name()), block.widths().get(i)));
            }
            out.append(palette.paint(Tone.HEAD, heading.toString().stripTrailing())).append('\n');
            own.forEach(line -> line(line, block, out));
        }
    }

    private void line(MatrixLine line, Block block, StringBuilder out) {
        List<String> labels = line.labels();
        if (labels.size() > 1) {
            out.append(labels.getFirst()).append('\n');
        }
        List<String> led = wrapped(labels.getLast(), "  ", label);
        List<List<String>> cells = new ArrayList<>();
        for (int i = 0; i < block.widths().size(); i++) {
            cells.add(cell(line, block.first() + i, block.first()));
        }
        int height = Math.max(led.size(), cells.stream().mapToInt(List::size).max().orElse(1));
        for (int i = 0; i < height; i++) {
            StringBuilder text = new StringBuilder(Cells.left(i < led.size() ? led.get(i) : "", label));
            for (int j = 0; j < cells.size(); j++) {
                String words = i < cells.get(j).size() ? cells.get(j).get(i) : "";
                String pad = " ".repeat(Math.max(0, block.widths().get(j) - Cells.width(words)));
                text.append(GAP).append(line.isOdd(block.first() + j) ? palette.paint(Tone.WARNING, words) : words)
                        .append(pad);
            }
            out.append(text.toString().stripTrailing()).append('\n');
        }
    }

    private List<String> cell(MatrixLine line, int column, int first) {
        Cell cell = line.row().cells().get(column);
        if (line.isBlank(column)) {
            return List.of("");
        }
        List<String> text = new ArrayList<>();
        if (cell.isAbsent()) {
            absentSeen = true;
            text.add("-");
        } else if (column > first && cell.says(line.row().cells().get(column - 1))) {
            equalSeen = true;
            text.add("=");
        } else {
            cell.values().forEach(value -> text.addAll(value(value, column)));
        }
        if (line.isOdd(column)) {
            oddSeen = true;
            int at = cell.length().isPresent() ? 0 : text.size() - 1;
            text.set(at, text.get(at) + MARK);
        }
        return text;
    }

    /** A length has its figure in the first line, so that figures stand in line, and what is written in the next. */
    private List<String> value(Value value, int column) {
        if (value.length().isEmpty()) {
            return wrapped(Cells.printable(value.words()), "  ", WIDEST_CELL);
        }
        lengthSeen = true;
        pathSeen |= value.path();
        countedSeen |= value.written().startsWith("+");
        String figure = MatrixWords.figure(value.length().get());
        String behind = Cells.printable(MatrixWords.behind(value));
        boolean below = behind.startsWith(" (");
        List<String> text = new ArrayList<>();
        text.add(" ".repeat(figures[column] - figure.length()) + figure + (below ? "" : behind));
        if (below) {
            text.addAll(wrapped(behind, " ", WIDEST_CELL));
        }
        if (!value.when().isEmpty()) {
            text.addAll(wrapped("  when " + Cells.printable(value.when()), "  ", WIDEST_CELL));
        }
        return text;
    }

    /**
     * Text in lines of at most some columns, broken between words. Leading spaces stay.
     *
     * @param further what further lines begin with besides
     */
    static List<String> wrapped(String text, String further, int width) {
        List<String> lines = new ArrayList<>();
        String indent = text.substring(0, text.length() - text.stripLeading().length());
        StringBuilder line = new StringBuilder(indent);
        boolean empty = true;
        for (String word : text.strip().split(" ")) {
            if (!empty && Cells.width(line.toString()) + 1 + Cells.width(word) > width) {
                lines.add(line.toString());
                line = new StringBuilder(indent).append(further);
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line.toString());
        return lines;
    }

    /** What the signs mean that occur. */
    List<String> legend() {
        List<String> words = new ArrayList<>();
        words.add(equalSeen ? "= as the one to its left" : "");
        words.add(oddSeen ? "* the only one that differs" : "");
        words.add(absentSeen ? "- does not have it" : "");
        words.add(lengthSeen ? "lengths in mm, as written in brackets" : "");
        words.add(pathSeen ? "path: along the path, without what plugging in takes" : "");
        words.add(countedSeen ? "+ counted from another breakout" : "");
        words.removeIf(String::isEmpty);
        return words;
    }
}
