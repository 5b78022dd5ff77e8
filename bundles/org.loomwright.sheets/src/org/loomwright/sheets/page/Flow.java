// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.page;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Mark.Fill;
import org.loomwright.sheets.document.Mark.Stroke;
import org.loomwright.sheets.document.Mark.Text;
import org.loomwright.sheets.document.Point;

/** Puts blocks below each other and turns the page when one does not fit. */
final class Flow {

    private static final double RULED = 9;
    /** Fewer ruled lines than that are not worth their room at the end of a page. */
    private static final int LEAST_RULED = 4;
    /** A picture is begun on the next page rather than shrunk to less than this, where it is larger there. */
    private static final double ENOUGH = 0.85;
    /** What is made smaller than this on any page is an overview, which may be that much smaller still. */
    private static final double OVERVIEW = 0.5;

    /** Room in mm for the headings of a table and its first rows. */
    private static final double TABLE = 34;

    private final Typeface face;
    private final Wrapping wrapping;
    private final double left;
    private final double right;
    private final double top;
    private final double bottom;
    private final List<List<Mark>> pages = new ArrayList<>();
    private double y;

    Flow(Typeface face, double left, double right, double top, double bottom) {
        this.face = face;
        this.wrapping = new Wrapping(face);
        this.left = left;
        this.right = right;
        this.top = top;
        this.bottom = bottom;
        turn();
    }

    List<List<Mark>> pages() {
        return pages;
    }

    /** Adds a block; a heading is kept with what follows. */
    void add(Block block, List<Block> following) {
        switch (block) {
            case Block.Heading heading -> heading(heading.text(), kept(following));
            case Block.Words words -> paragraph(words.text(), left, right, Look.BODY, false);
            case Block.Cautions cautions -> cautions(cautions.lines());
            case Block.Steps steps -> steps(steps.lines());
            case Block.Picture picture -> picture(picture);
            case Block.Sheet sheet -> {
                if (!pages.getLast().isEmpty()) {
                    turn();
                }
                sheet.drawing().marks().forEach(each -> mark(each.moved(left, y)));
                y = bottom;
            }
            case Block.Lines lines -> lines(lines.count());
            case Block.Labels labels -> new LabelFlow(this, face).lay(labels.labels());
            case Block.Grid grid -> new GridFlow(this, face, grid).lay();
            case Block.NewPage page -> {
                if (!pages.getLast().isEmpty()) {
                    turn();
                }
            }
        }
    }

    void turn() {
        pages.add(new ArrayList<>());
        y = top;
    }

    double left() {
        return left;
    }

    double width() {
        return right - left;
    }

    double room() {
        return bottom - y;
    }

    /** Room on an empty page. */
    double whole() {
        return bottom - top;
    }

    double y() {
        return y;
    }

    void down(double by) {
        y += by;
    }

    void mark(Mark mark) {
        pages.getLast().add(mark);
    }

    /**
     * Room that a heading wants below it: that of a picture where one follows, with the first lines of the table
     * below it, else that of some lines.
     */
    private double kept(List<Block> following) {
        for (int i = 0; i < following.size(); i++) {
            Block each = following.get(i);
            if (each instanceof Block.Picture picture) {
                boolean table = i + 1 < following.size() && following.get(i + 1) instanceof Block.Grid;
                return Math.min(whole() - 30, picture.drawing().height() * Math.min(1, width()
                        / picture.drawing().width()) + 14 + (table ? TABLE : 0));
            }
            if (each instanceof Block.Lines lines) {
                return Math.min(lines.count(), LEAST_RULED) * RULED + Look.GAP;
            }
            if (!(each instanceof Block.Words)) {
                break;
            }
        }
        return 24;
    }

    private void heading(String text, double kept) {
        List<String> lines = wrapping.lines(text, Look.HEADING, true, width());
        double height = Look.line(Look.HEADING) * lines.size() + Look.GAP;
        if (room() < height + kept && y > top) {
            turn();
        }
        if (y > top) {
            y += Look.GAP / 2;
        }
        for (String line : lines) {
            mark(new Text(new Point(left, y + Look.ascent(Look.HEADING)), Look.HEADING, true, line));
            y += Look.line(Look.HEADING);
        }
        y += 1.2;
    }

    private void paragraph(String text, double from, double to, double points, boolean bold) {
        for (String line : wrapping.lines(text, points, bold, to - from)) {
            if (room() < Look.line(points)) {
                turn();
            }
            if (!line.isEmpty()) {
                mark(new Text(new Point(from, y + Look.ascent(points)), points, bold, line));
            }
            y += Look.line(points);
        }
        y += 1.4;
    }

    private void cautions(List<String> texts) {
        double inner = left + 18;
        List<List<String>> all = texts.stream()
                .map(text -> wrapping.lines(text, Look.BODY, false, right - inner - 3)).toList();
        double height = 4 + all.stream().mapToDouble(each -> each.size() * Look.line(Look.BODY) + 1).sum();
        if (height > room() && height <= whole()) {
            turn();
        }
        double from = y;
        y += 2;
        for (List<String> lines : all) {
            for (String line : lines) {
                if (room() < Look.line(Look.BODY) + 2) {
                    sign(from);
                    turn();
                    from = y;
                    y += 2;
                }
                mark(new Text(new Point(inner, y + Look.ascent(Look.BODY)), Look.BODY, false, line));
                y += Look.line(Look.BODY);
            }
            y += 1;
        }
        y += 2;
        sign(from);
        y += Look.GAP;
    }

    /** Frame and sign of cautions: a triangle with an exclamation mark. */
    private void sign(double from) {
        mark(Stroke.frame(left, from, width(), y - from, 0.7, Ink.BLACK));
        if (y - from >= 14) {
            mark(new Stroke(List.of(new Point(left + 3, from + 12.5), new Point(left + 15, from + 12.5),
                    new Point(left + 9, from + 2.2), new Point(left + 3, from + 12.5)), 0.9, Ink.BLACK, 0));
            mark(new Fill(List.of(new Point(left + 8.3, from + 5.5), new Point(left + 9.7, from + 5.5),
                    new Point(left + 9.3, from + 9.4), new Point(left + 8.7, from + 9.4)), Ink.BLACK));
            mark(new Mark.Circle(new Point(left + 9, from + 10.8), 0.7, 0, true, Ink.BLACK));
        }
    }

    private void steps(List<String> texts) {
        double inner = left + 16;
        for (int i = 0; i < texts.size(); i++) {
            List<String> lines = wrapping.lines(texts.get(i), Look.BODY, false, right - inner);
            double height = Math.max(Look.line(Look.BODY) * lines.size(), 5.4);
            if (height > room()) {
                turn();
            }
            String number = Integer.toString(i + 1);
            mark(Stroke.frame(left, y + 0.3, 4.4, 4.4, 0.4, Ink.BLACK));
            mark(new Text(new Point(left + 13.4 - face.width(number, Look.BODY, true), y + Look.ascent(Look.BODY)),
                    Look.BODY, true, number));
            for (String line : lines) {
                if (room() < Look.line(Look.BODY)) {
                    turn();
                }
                mark(new Text(new Point(inner, y + Look.ascent(Look.BODY)), Look.BODY, false, line));
                y += Look.line(Look.BODY);
            }
            y += Math.max(1.4, height - Look.line(Look.BODY) * lines.size() + 0.8);
        }
        y += Look.GAP / 2;
    }

    private void picture(Block.Picture picture) {
        Drawing drawing = picture.drawing();
        double caption = picture.caption().isEmpty() ? 0
                : Look.line(Look.SMALL) * wrapping.lines(picture.caption(), Look.SMALL, false, width()).size() + 2;
        double scale = scale(drawing, whole() - caption);
        double here = scale(drawing, room() - caption);
        if (here >= (scale < OVERVIEW ? scale * ENOUGH : Math.min(scale, ENOUGH))) {
            scale = here;
        } else {
            turn();
        }
        Shrinking shrinking = new Shrinking(scale);
        drawing.marks().forEach(each -> mark(shrinking.of(each).moved(left, y)));
        y += drawing.height() * scale + 1;
        if (caption > 0) {
            paragraph(picture.caption(), left, right, Look.SMALL, false);
        }
        y += 1;
    }

    /** What it has to be shrunk to. */
    private double scale(Drawing drawing, double height) {
        return Math.min(1, Math.min(width() / drawing.width(), (height - 2) / drawing.height()));
    }

    /** As many as the page has room for, rather than some on a page of their own. */
    private void lines(int count) {
        if (room() < Math.min(count, LEAST_RULED) * RULED) {
            turn();
        }
        for (int i = 0; i < count && room() >= RULED; i++) {
            y += RULED;
            mark(Stroke.line(left, y, right, y, Look.RULE, Ink.GREY));
        }
        y += Look.GAP;
    }
}
