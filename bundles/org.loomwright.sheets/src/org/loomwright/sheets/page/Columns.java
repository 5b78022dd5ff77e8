// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.page;

import java.util.Arrays;
import java.util.List;
import org.loomwright.sheets.document.Block;

/** Finds how wide the columns of a table are. O(cells). */
final class Columns {

    /** What is no wider than this, in mm, is not broken where there is room. */
    private static final double SHORT = 17;

    private final Typeface face;
    private final Wrapping wrapping;

    Columns(Typeface face) {
        this.face = face;
        this.wrapping = new Wrapping(face);
    }

    /**
     * Widths in mm that add up to {@code width}: short texts are not broken and headings have two lines at most where
     * that is possible, else every column gets its longest word where that is possible, else the widest columns
     * give way.
     */
    double[] widths(Block.Grid grid, double width) {
        int count = grid.columns().size();
        double[] least = new double[count];
        double[] whole = new double[count];
        double[] wished = new double[count];
        for (int i = 0; i < count; i++) {
            String heading = grid.columns().get(i).heading();
            least[i] = wrapping.longestWord(heading, Look.CELL, true);
            whole[i] = twoLines(heading);
            wished[i] = whole[i];
            for (Block.Row row : grid.rows()) {
                Block.Cell cell = row.cells().get(i);
                if (spans(row)) {
                    continue;
                }
                double more = extra(cell);
                least[i] = Math.max(least[i], more + wrapping.longestWord(cell.text(), Look.CELL, row.strong()));
                double line = face.width(face.printable(cell.text()), Look.CELL, row.strong());
                wished[i] = Math.max(wished[i], more + line);
                whole[i] = Math.max(whole[i], line <= SHORT ? more + line : least[i]);
            }
            least[i] += 2 * Look.PADDING + 0.1;
            whole[i] = Math.max(least[i], whole[i] + 2 * Look.PADDING + 0.1);
            wished[i] += 2 * Look.PADDING + 0.1;
        }
        return share(sum(whole) <= width ? whole : least, wished, width);
    }

    /** The least width at which a heading has no more than two lines, as far as its words allow. */
    private double twoLines(String heading) {
        String[] words = heading.split(" ");
        double best = face.width(face.printable(heading), Look.CELL, true);
        for (int i = 1; i < words.length; i++) {
            double first = face.width(face.printable(String.join(" ", List.of(words).subList(0, i))), Look.CELL, true);
            double second = face.width(face.printable(String.join(" ", List.of(words).subList(i, words.length))),
                    Look.CELL, true);
            best = Math.min(best, Math.max(first, second));
        }
        return best;
    }

    /** A row whose first cell alone says something, and which is set apart, runs over all columns. */
    static boolean spans(Block.Row row) {
        List<Block.Cell> rest = row.cells().subList(1, row.cells().size());
        return row.strong() && rest.stream().allMatch(each -> each.text().isEmpty() && !each.tick());
    }

    static double extra(Block.Cell cell) {
        return cell.colour().isEmpty() ? cell.tick() ? Look.TICK : 0 : Look.SWATCH + Look.PADDING;
    }

    private static double[] share(double[] least, double[] wished, double width) {
        double sumLeast = sum(least);
        double sumWished = sum(wished);
        double[] widths = new double[least.length];
        double level = sumLeast > width ? level(least, width) : 0;
        for (int i = 0; i < widths.length; i++) {
            if (sumWished <= width) {
                widths[i] = wished[i] + (width - sumWished) * wished[i] / sumWished;
            } else if (sumLeast <= width) {
                widths[i] = least[i] + (width - sumLeast) * (wished[i] - least[i]) / (sumWished - sumLeast);
            } else {
                widths[i] = Math.min(least[i], level);
            }
        }
        return widths;
    }

    /** The width to which the widest columns are cut down, so that all together are as wide as there is room. */
    private static double level(double[] least, double width) {
        double[] sorted = least.clone();
        Arrays.sort(sorted);
        double rest = width;
        for (int i = 0; i < sorted.length; i++) {
            double fair = rest / (sorted.length - i);
            if (sorted[i] > fair) {
                return fair;
            }
            rest -= sorted[i];
        }
        return sorted[sorted.length - 1];
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double each : values) {
            sum += each;
        }
        return sum;
    }
}
