// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.page;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.sheets.document.Document;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Mark.Fill;
import org.loomwright.sheets.document.Mark.Stroke;
import org.loomwright.sheets.document.Mark.Text;
import org.loomwright.sheets.document.Point;

/**
 * Lays a document out on pages: heading, title block, page x of y, stamp. Nothing is printed over anything else; what
 * is too long wraps or goes on on the next page. Linear in the length of the document. For use by one thread.
 */
public final class Pager {

    private static final String NAME = "LOOMWRIGHT";

    private final Typeface face;
    private final Wrapping wrapping;
    private final Paper paper;
    private final TitleBlock block;

    public Pager(Typeface face, Paper paper, TitleBlock block) {
        this.face = face;
        this.wrapping = new Wrapping(face);
        this.paper = paper;
        this.block = block;
    }

    /** The pages of a document, at least one. */
    public List<Page> pages(Document document) {
        double width = document.landscape() ? paper.height() : paper.width();
        double height = document.landscape() ? paper.width() : paper.height();
        List<Mark> head = new ArrayList<>();
        double top = head(document, width, head);
        List<String> vehicles = wrapping.lines(block.vehicles(), Look.SMALL, false, width - 2 * Look.MARGIN - 22);
        double bottom = height - Look.MARGIN - footOf(vehicles.size());
        Flow flow = new Flow(face, Look.MARGIN, width - Look.MARGIN, top, bottom);
        for (int i = 0; i < document.blocks().size(); i++) {
            flow.add(document.blocks().get(i), document.blocks().subList(i + 1, document.blocks().size()));
        }
        List<Page> pages = new ArrayList<>();
        List<List<Mark>> contents = flow.pages();
        for (int i = 0; i < contents.size(); i++) {
            List<Mark> marks = new ArrayList<>();
            block.stamp().ifPresent(words -> stamp(words, width, height, marks));
            marks.addAll(head);
            marks.addAll(contents.get(i));
            foot(vehicles, "Page " + (i + 1) + " of " + contents.size(), width, bottom + Look.GAP, marks);
            pages.add(new Page(width, height, marks));
        }
        return pages;
    }

    /** The room for content on a page of a document: a board of that size in mm fits on it. */
    public Room room(Document document) {
        double width = document.landscape() ? paper.height() : paper.width();
        double height = document.landscape() ? paper.width() : paper.height();
        double top = head(document, width, new ArrayList<>());
        int lines = wrapping.lines(block.vehicles(), Look.SMALL, false, width - 2 * Look.MARGIN - 22).size();
        return new Room(width - 2 * Look.MARGIN, height - Look.MARGIN - footOf(lines) - top);
    }

    /** A width and a height in mm. */
    public record Room(double width, double height) {
    }

    /** The heading; returns where the content begins. */
    private double head(Document document, double width, List<Mark> marks) {
        double y = Look.MARGIN;
        double right = width - Look.MARGIN;
        marks.add(Fill.box(Look.MARGIN, y, right - Look.MARGIN, 1.6, Ink.BLACK));
        y += 2.6;
        double tag = 0;
        if (!block.revision().isEmpty()) {
            String words = face.printable("REV " + block.revision());
            tag = face.width(words, Look.HEADING, true) + 6;
            marks.add(Fill.box(right - tag, y, tag, 7.4, Ink.BLACK));
            marks.add(new Text(new Point(right - tag + 3, y + 5.4), Look.HEADING, true, Ink.WHITE, 0, words));
        }
        for (String line : wrapping.lines(document.title(), Look.TITLE, true, right - Look.MARGIN - tag - 4)) {
            marks.add(new Text(new Point(Look.MARGIN, y + Look.ascent(Look.TITLE)), Look.TITLE, true, line));
            y += Look.line(Look.TITLE);
        }
        for (String line : wrapping.lines(document.subject(), Look.SUBJECT, false, right - Look.MARGIN - tag - 4)) {
            marks.add(new Text(new Point(Look.MARGIN, y + Look.ascent(Look.SUBJECT)), Look.SUBJECT, false, line));
            y += Look.line(Look.SUBJECT);
        }
        y += 1;
        marks.add(Stroke.line(Look.MARGIN, y, right, y, Look.RULE, Ink.BLACK));
        return y + Look.GAP;
    }

    private static double footOf(int lines) {
        return Look.GAP + 2 * Look.PADDING + Look.line(Look.SMALL) * (1 + lines) + 1;
    }

    private void foot(List<String> vehicles, String page, double width, double top, List<Mark> marks) {
        double right = width - Look.MARGIN;
        marks.add(Stroke.line(Look.MARGIN, top, right, top, 2 * Look.RULE, Ink.BLACK));
        double y = top + Look.PADDING;
        double base = y + Look.ascent(Look.SMALL);
        double end = right - face.width(page, Look.BODY, true);
        marks.add(new Text(new Point(end, base + 0.6), Look.BODY, true, page));
        String sources = face.printable(NAME + "   " + block.sources());
        double at = end - 6 - face.width(sources, Look.SMALL, false);
        String kit = wrapping.lines(block.kit(), Look.SMALL, true, Math.max(20, at - Look.MARGIN - 4)).getFirst();
        marks.add(new Text(new Point(Look.MARGIN, base), Look.SMALL, true, kit));
        if (at > Look.MARGIN + face.width(kit, Look.SMALL, true) + 2) {
            marks.add(new Text(new Point(at, base), Look.SMALL, false, sources));
        }
        y += Look.line(Look.SMALL);
        for (int i = 0; i < vehicles.size(); i++) {
            base = y + Look.ascent(Look.SMALL);
            if (i == 0) {
                marks.add(new Text(new Point(Look.MARGIN, base), Look.SMALL, true, "Vehicles"));
            }
            marks.add(new Text(new Point(Look.MARGIN + 16, base), Look.SMALL, false, vehicles.get(i)));
            y += Look.line(Look.SMALL);
        }
    }

    private void stamp(String words, double width, double height, List<Mark> marks) {
        String text = face.printable(words);
        double angle = Math.atan2(height, width);
        double room = Math.hypot(width, height) - 80;
        double points = Math.min(Look.STAMP, Look.STAMP * room / face.width(text, Look.STAMP, true));
        double half = face.width(text, points, true) / 2;
        marks.add(new Text(new Point(width / 2 - half * Math.cos(angle), height / 2 + half * Math.sin(angle)), points,
                true, Ink.STAMP, Math.toDegrees(angle), text));
    }
}
