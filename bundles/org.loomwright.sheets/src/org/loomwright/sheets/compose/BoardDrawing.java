// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.sheets.board.Board;
import org.loomwright.sheets.board.Strand;
import org.loomwright.sheets.compose.LabelRoom.Box;
import org.loomwright.sheets.content.Words;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Mark.Circle;
import org.loomwright.sheets.document.Mark.Fill;
import org.loomwright.sheets.document.Mark.Stroke;
import org.loomwright.sheets.document.Mark.Text;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.page.Typeface;

/**
 * Draws a harness on its board at full size: bundles as thick as they are with a line along their middle, coverings
 * around them, and what sits where. A text that finds no room is left out here; the tables have it.
 */
final class BoardDrawing {

    /** Bundles alone have this ink. */
    static final Ink BUNDLE = new Ink(206, 210, 214);
    private static final Ink COVER = new Ink(96, 96, 96);
    private static final double LEAST_BUNDLE = 1.2;
    private static final double BOX_WIDTH = 25;
    private static final double BOX_HEIGHT = 7;
    private static final double POINTS = 8;
    private static final double LEADER = 9;

    private final Boarding boarding;
    private final Typeface face;
    private final LabelRoom room;
    private final List<Mark> marks = new ArrayList<>();
    private final List<Mark> leaders = new ArrayList<>();
    private final List<Mark> texts = new ArrayList<>();

    private BoardDrawing(Boarding boarding, Typeface face, Tiling tiling) {
        this.boarding = boarding;
        this.face = face;
        Board board = boarding.board();
        this.room = new LabelRoom(box -> box.left() >= 2 && box.top() >= 2 && box.right() <= board.width() - 2
                && box.bottom() <= board.height() - 2 && tiling.holds(box));
    }

    static Drawing of(Boarding boarding, Typeface face, Tiling tiling) {
        BoardDrawing drawing = new BoardDrawing(boarding, face, tiling);
        drawing.bundles();
        drawing.connectors();
        drawing.stations();
        drawing.names();
        List<Mark> all = new ArrayList<>();
        all.add(Stroke.frame(0.5, 0.5, boarding.board().width() - 1, boarding.board().height() - 1, 0.4, Ink.GREY));
        all.addAll(drawing.marks);
        all.addAll(drawing.leaders);
        all.addAll(drawing.texts);
        return new Drawing(boarding.board().width(), boarding.board().height(), all);
    }

    private void bundles() {
        for (Boarding.Cover cover : boarding.covers()) {
            List<Point> path = boarding.path(cover.strand());
            if (path != null) {
                marks.add(new Stroke(Board.between(path, cover.from(), cover.to()), thickness(cover) + 2.4, COVER, 0));
            }
        }
        for (Boarding.Bundle bundle : boarding.bundles()) {
            List<Point> path = boarding.path(bundle.strand());
            if (path != null) {
                marks.add(new Stroke(Board.between(path, bundle.from(), bundle.to()),
                        Math.max(LEAST_BUNDLE, bundle.diameter()), BUNDLE, 0));
            }
        }
        for (Strand strand : boarding.strands()) {
            List<Point> path = boarding.path(strand.name());
            marks.add(new Stroke(path, 0.25, Ink.BLACK, boarding.guessed().contains(strand.name()) ? 3 : 0));
            room.take(path, beyond(strand));
        }
    }

    /** Half of the thickest bundle on a strand, and a little. */
    private double beyond(Strand strand) {
        return boarding.bundles().stream().filter(each -> each.strand().equals(strand.name()))
                .mapToDouble(Boarding.Bundle::diameter).max().orElse(0) / 2 + 1.6;
    }

    private double thickness(Boarding.Cover cover) {
        return boarding.bundles().stream().filter(each -> each.strand().equals(cover.strand())
                && each.from() < cover.to() && each.to() > cover.from()).mapToDouble(Boarding.Bundle::diameter).max()
                .orElse(LEAST_BUNDLE);
    }

    private void connectors() {
        for (Strand strand : boarding.strands()) {
            List<String> names = boarding.ends().getOrDefault(strand.name(), List.of());
            List<Point> path = boarding.path(strand.name());
            Point end = path.getLast();
            Point before = path.get(path.size() - 2);
            double way = end.y() >= before.y() ? 1 : -1;
            double y = end.y() + way * (beyond(strand) + 0.2);
            for (String name : names) {
                double top = way > 0 ? y : y - BOX_HEIGHT;
                Box box = new Box(end.x() - BOX_WIDTH / 2, top, end.x() + BOX_WIDTH / 2, top + BOX_HEIGHT);
                if (Math.abs(end.y() - before.y()) < 1e-6 || !room.isFree(box)) {
                    free(name, end);
                } else {
                    outline(box, name);
                    y += way * (BOX_HEIGHT + 1);
                }
            }
        }
        Strand first = boarding.strands().isEmpty() ? null : boarding.strands().getFirst();
        if (first != null) {
            Point datum = boarding.path(boarding.strands().stream().filter(each -> each.parent().isEmpty())
                    .findFirst().orElse(first).name()).getFirst();
            marks.add(new Circle(datum, 3.2, 0.5, false, Ink.BLACK));
            marks.add(Stroke.line(datum.x() - 5, datum.y(), datum.x() + 5, datum.y(), 0.5, Ink.BLACK));
            marks.add(Stroke.line(datum.x(), datum.y() - 5, datum.x(), datum.y() + 5, 0.5, Ink.BLACK));
            room.take(new Box(datum.x() - 5, datum.y() - 5, datum.x() + 5, datum.y() + 5));
            label("DATUM", datum, true, 5);
            boarding.ends().getOrDefault("", List.of()).forEach(each -> free(each, datum));
            boarding.marks().stream().filter(each -> each.strand().isEmpty()).forEach(each -> label(
                    (each.sort() == Boarding.Sort.SPLICE ? "splice " : "") + each.text(), datum, false, 5));
        }
    }

    private void outline(Box box, String name) {
        room.sign(box);
        texts.add(Fill.box(box.left(), box.top(), BOX_WIDTH, BOX_HEIGHT, Ink.WHITE));
        texts.add(Stroke.frame(box.left(), box.top(), BOX_WIDTH, BOX_HEIGHT, 0.6, Ink.BLACK));
        String text = cut(name, BOX_WIDTH - 2);
        texts.add(new Text(new Point((box.left() + box.right()) / 2 - face.width(text, POINTS, true) / 2,
                box.top() + 4.6), POINTS, true, text));
    }

    private void free(String name, Point around) {
        room.place(around, BOX_WIDTH, BOX_HEIGHT, 7).ifPresent(corner -> {
            Box box = new Box(corner.x(), corner.y() - BOX_HEIGHT, corner.x() + BOX_WIDTH, corner.y());
            leader(around, box.nearest(around), 0.15);
            outline(box, name);
        });
    }

    private void stations() {
        for (Boarding.Mark mark : boarding.marks()) {
            List<Point> path = boarding.path(mark.strand());
            if (path == null) {
                continue;
            }
            Point at = Board.at(path, mark.station());
            switch (mark.sort()) {
                case BREAKOUT, DATUM -> {
                    marks.add(new Circle(at, 1.8, 0, true, Ink.WHITE));
                    marks.add(new Circle(at, 1.8, 0.5, false, Ink.BLACK));
                }
                case SPLICE -> {
                    marks.add(Fill.box(at.x() - 2.6, at.y() - 1.5, 5.2, 3, Ink.WHITE));
                    marks.add(Stroke.frame(at.x() - 2.6, at.y() - 1.5, 5.2, 3, 0.5, Ink.BLACK));
                }
                case CLIP -> marks.add(new Fill(List.of(at, at.plus(-2, 4), at.plus(2, 4)), Ink.BLACK));
                case BARRIER -> marks.add(new Stroke(List.of(at.plus(0, -6), at.plus(0, 6)), 0.8, Ink.BLACK, 1));
                case COVER_BEGIN, COVER_END -> marks.add(new Stroke(List.of(at.plus(0, -4), at.plus(0, 4)), 0.5,
                        Ink.BLACK, 0));
            }
        }
        for (Boarding.Mark mark : boarding.marks()) {
            List<Point> path = boarding.path(mark.strand());
            if (path != null) {
                label(mark.text(), Board.at(path, mark.station()), mark.sort() == Boarding.Sort.BREAKOUT, 3);
            }
        }
    }

    private void names() {
        for (Strand strand : boarding.strands()) {
            List<Point> path = boarding.path(strand.name());
            double length = Board.length(path);
            label(strand.name() + " " + (boarding.guessed().contains(strand.name()) ? "length not known"
                    : Words.figure(strand.length(), 1)), Board.at(path, length * 0.6), true, 3);
        }
        for (Boarding.Bundle bundle : boarding.bundles()) {
            List<Point> path = boarding.path(bundle.strand());
            if (path != null && bundle.to() - bundle.from() > 30 && bundle.diameter() > 0) {
                label("Ø " + Words.figure(bundle.diameter(), 1) + " (" + bundle.wires() + ")",
                        Board.at(path, (bundle.from() + bundle.to()) / 2), false, 3);
            }
        }
    }

    private void label(String words, Point at, boolean bold, double least) {
        String text = face.printable(words);
        double width = face.width(text, POINTS, bold);
        Optional<Point> corner = room.place(at, width, 3, least);
        corner.ifPresent(point -> {
            Point near = new Point(Math.clamp(at.x(), point.x(), point.x() + width), point.y() - 1.2);
            if (near.to(at) > LEADER) {
                leader(at, near, 0.12);
            }
            texts.add(new Text(new Point(point.x(), point.y() - 0.4), POINTS, bold, text));
        });
    }

    /** From what is named to its name; what is placed later stays off it. */
    private void leader(Point from, Point to, double width) {
        leaders.add(new Stroke(List.of(from, to), width, Ink.GREY, 0));
        room.take(List.of(from, to), 0.4);
    }

    private String cut(String words, double width) {
        String text = face.printable(words);
        for (int end = text.length() - 1; face.width(text, POINTS, true) > width && end > 0; end--) {
            text = face.printable(words).substring(0, end) + "…";
        }
        return text;
    }
}
