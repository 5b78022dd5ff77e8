// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.page;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark.Fill;
import org.loomwright.sheets.document.Mark.Stroke;
import org.loomwright.sheets.document.Mark.Text;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.document.WireInk;

/** Lays a table out: headings again on every page, a row that is taller than a page goes on on the next one. */
final class GridFlow {

    private static final double LINE = Look.line(Look.CELL);

    private final Flow flow;
    private final Typeface face;
    private final Wrapping wrapping;
    private final Block.Grid grid;
    private final double[] widths;
    private boolean pale;
    /** The name of the group that the rows are in; null before the first. */
    private Block.Row group;

    GridFlow(Flow flow, Typeface face, Block.Grid grid) {
        this.flow = flow;
        this.face = face;
        this.wrapping = new Wrapping(face);
        this.grid = grid;
        this.widths = new Columns(face).widths(grid, flow.width());
    }

    void lay() {
        List<List<String>> headings = new ArrayList<>();
        for (int i = 0; i < widths.length; i++) {
            headings.add(wrapping.lines(grid.columns().get(i).heading(), Look.CELL, true,
                    widths[i] - 2 * Look.PADDING));
        }
        double head = height(most(headings));
        if (flow.room() < head + height(2)) {
            flow.turn();
        }
        headings(headings, head);
        for (int i = 0; i < grid.rows().size(); i++) {
            Block.Row row = grid.rows().get(i);
            List<List<String>> lines = lines(row);
            int most = Math.max(1, most(lines));
            double height = rowHeight(row, most);
            double whole = flow.whole() - head - (row.strong() || group == null ? 0 : height(1));
            if (height > flow.room() && height <= whole
                    || row.strong() && flow.room() < height + next(i + 1, flow.whole() - head - height)
                    || i > 0 && i == grid.rows().size() - 2 && height + next(i + 1, whole) <= whole
                    && flow.room() < height + next(i + 1, whole)) { // the last row does not stand alone
                turn(headings, head, row);
            }
            int from = 0;
            while (from < most) {
                int room = (int) Math.floor((flow.room() - 2 * Look.PADDING) / LINE);
                if (room < 1) {
                    turn(headings, head, row);
                    continue;
                }
                int to = Math.min(most, from + room);
                draw(row, lines, from, to);
                from = to;
                if (from < most) {
                    turn(headings, head, row);
                }
            }
            group = Columns.spans(row) ? row : group;
            pale = !row.strong() && !pale;
        }
        flow.down(Look.GAP);
    }

    /** Begins a page with the headings, and with the name of the group that goes on there. */
    private void turn(List<List<String>> headings, double head, Block.Row row) {
        flow.turn();
        headings(headings, head);
        if (group != null && !row.strong()) {
            List<List<String>> name = lines(group);
            String first = wrapping.lines(name.getFirst().getFirst() + " (continued)", Look.CELL, true,
                    flow.width() - 2 * Look.PADDING).getFirst();
            name.set(0, List.of(first));
            draw(group, name, 0, 1);
        }
    }

    /** Room for the row below the name of a group, so that the name does not stand alone. */
    private double next(int index, double most) {
        if (index == grid.rows().size()) {
            return 0;
        }
        Block.Row row = grid.rows().get(index);
        double height = rowHeight(row, Math.max(1, most(lines(row))));
        return height <= most ? height : height(1);
    }

    private List<List<String>> lines(Block.Row row) {
        List<List<String>> lines = new ArrayList<>();
        boolean spans = Columns.spans(row);
        for (int i = 0; i < widths.length; i++) {
            Block.Cell cell = row.cells().get(i);
            double width = spans && i == 0 ? flow.width() : widths[i];
            lines.add(cell.text().isEmpty() ? List.of() : wrapping.lines(cell.text(), Look.CELL, row.strong(),
                    width - 2 * Look.PADDING - Columns.extra(cell)));
        }
        return lines;
    }

    private static int most(List<List<String>> lines) {
        return lines.stream().mapToInt(List::size).max().orElse(0);
    }

    private static double height(int lines) {
        return lines * LINE + 2 * Look.PADDING;
    }

    private static double rowHeight(Block.Row row, int lines) {
        boolean tick = row.cells().stream().anyMatch(Block.Cell::tick);
        return Math.max(height(lines), tick ? Look.TICK + 2 * Look.PADDING : 0);
    }

    private void headings(List<List<String>> headings, double height) {
        flow.mark(Fill.box(flow.left(), flow.y(), flow.width(), height, Ink.BLACK));
        double x = flow.left();
        for (int i = 0; i < widths.length; i++) {
            for (int line = 0; line < headings.get(i).size(); line++) {
                String text = headings.get(i).get(line);
                double at = grid.columns().get(i).figures()
                        ? x + widths[i] - Look.PADDING - face.width(text, Look.CELL, true) : x + Look.PADDING;
                flow.mark(new Text(new Point(at, flow.y() + Look.PADDING + line * LINE + Look.ascent(Look.CELL)),
                        Look.CELL, true, Ink.WHITE, 0, text));
            }
            x += widths[i];
        }
        flow.down(height);
    }

    private void draw(Block.Row row, List<List<String>> lines, int from, int to) {
        double y = flow.y();
        double height = rowHeight(row, to - from);
        if (row.strong() || pale) {
            flow.mark(Fill.box(flow.left(), y, flow.width(), height, row.strong() ? new Ink(214, 214, 214) : Ink.PALE));
        }
        double x = flow.left();
        for (int i = 0; i < widths.length; i++) {
            Block.Cell cell = row.cells().get(i);
            double text = x + Look.PADDING;
            if (from == 0 && !cell.colour().isEmpty()) {
                WireInk.bar(cell.colour(), text, y + Look.PADDING + 0.6, Look.SWATCH, Look.SWATCH_HEIGHT)
                        .forEach(flow::mark);
            }
            if (from == 0 && cell.tick()) {
                flow.mark(Stroke.frame(text, y + (height - Look.TICK) / 2, Math.max(Look.TICK,
                        widths[i] - 2 * Look.PADDING), Look.TICK, 0.3, Ink.BLACK));
            }
            text += Columns.extra(cell);
            for (int line = from; line < Math.min(to, lines.get(i).size()); line++) {
                String words = lines.get(i).get(line);
                double at = grid.columns().get(i).figures() && !Columns.spans(row)
                        ? x + widths[i] - Look.PADDING - face.width(words, Look.CELL, row.strong()) : text;
                flow.mark(new Text(new Point(at, y + Look.PADDING + (line - from) * LINE + Look.ascent(Look.CELL)),
                        Look.CELL, row.strong(), words));
            }
            x += widths[i];
        }
        flow.mark(Stroke.line(flow.left(), y + height, flow.left() + flow.width(), y + height, Look.RULE, Ink.GREY));
        flow.down(height);
    }
}
