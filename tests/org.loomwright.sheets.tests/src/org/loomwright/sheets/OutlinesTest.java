// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.sheets.compose.Composer;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.document.Document;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.page.Page;
import org.loomwright.sheets.page.Pager;
import org.loomwright.sheets.page.Paper;
import org.loomwright.sheets.page.TitleBlock;
import org.loomwright.sheets.page.Typeface;

/** Outlines on all pages of all kits: two lie beside each other or one in the other, and no text crosses one. */
class OutlinesTest {

    /** What two may share before it can be seen, in mm: the line itself. */
    private static final double LINE = 0.5;
    /** Share of the size of type that capital letters are high: Liberation Sans has 1409 of 2048 units. */
    private static final double CAPITALS = 1409 / 2048.0;
    /** In points; type is shrunk with its diagram. */
    private static final double SMALLEST = 7;

    private static Examples examples;
    private static Opened orrin;
    private final Typeface face = new Typeface();

    /** A box on a page in mm. */
    private record Box(double left, double top, double right, double bottom, String what) {

        boolean meets(Box other) {
            return Math.min(right, other.right) - Math.max(left, other.left) > LINE
                    && Math.min(bottom, other.bottom) - Math.max(top, other.top) > LINE;
        }

        boolean holds(Box other) {
            return left <= other.left + LINE && top <= other.top + LINE && right >= other.right - LINE
                    && bottom >= other.bottom - LINE;
        }
    }

    @BeforeAll
    static void open() throws Exception {
        examples = new Examples();
        orrin = examples.example("orrin");
    }

    private List<Document> documents(Order order, Pager pager) {
        Composer composer = new Composer(order, face);
        List<Document> all = new ArrayList<>(List.of(composer.cover(List.of()), composer.application(),
                composer.installation(), composer.parts(), composer.tags()));
        for (LaidHarness harness : order.harnesses()) {
            SheetChoice.Size board = SheetChoice.USUAL_BOARD;
            all.addAll(List.of(composer.wireList(harness), composer.crimps(harness), composer.circuits(harness, pager),
                    composer.endViews(harness), composer.continuity(harness), composer.traveller(harness),
                    composer.formboard(harness, pager, board.width(), board.height()).document()));
        }
        return all;
    }

    @Test
    void noOutlineCrossesAnotherNorAText() throws Exception {
        List<String> found = new ArrayList<>();
        int outlines = 0;
        for (String kit : orrin.project().kits().keySet()) {
            Order order = examples.order(orrin, kit, "");
            for (Paper paper : kit.equals("rearKit") ? List.of(Paper.A4, Paper.LETTER) : List.of(Paper.A4)) {
                Pager pager = new Pager(face, paper, new TitleBlock(order.title(), order.revision(), order.sources(),
                        order.words(), Optional.empty()));
                for (Document document : documents(order, pager)) {
                    List<Page> pages = pager.pages(document);
                    for (int i = 0; i < pages.size(); i++) {
                        String where = document.name() + " page " + (i + 1) + " on " + paper.word() + ": ";
                        outlines += look(pages.get(i), where, found);
                    }
                }
            }
        }
        assertEquals(List.of(), found);
        assertTrue(outlines > 1_000, outlines + " outlines");
    }

    @Test
    void whatCrossesIsSeen() {
        Mark frame = Mark.Stroke.frame(10, 10, 40, 20, 0.4, Ink.BLACK);
        Mark crossing = Mark.Stroke.frame(30, 20, 40, 20, 0.4, Ink.BLACK);
        Mark inside = Mark.Stroke.frame(12, 12, 8, 8, 0.4, Ink.BLACK);
        Mark over = new Mark.Text(new Point(40, 15), 9, false, "over the edge");
        Mark within = new Mark.Text(new Point(22, 15), 9, false, "in");
        Mark upon = new Mark.Text(new Point(23, 16), 9, false, "on");
        List<String> found = new ArrayList<>();
        assertEquals(2, look(new Page(210, 297, List.of(frame, inside, within)), "", found));
        assertEquals(List.of(), found);
        look(new Page(210, 297, List.of(frame, crossing)), "", found);
        look(new Page(210, 297, List.of(frame, over)), "", found);
        look(new Page(210, 297, List.of(within, upon)), "", found);
        look(new Page(45, 297, List.of(over)), "", found);
        assertEquals(4, found.size(), found.toString());
    }

    private int look(Page page, String where, List<String> found) {
        List<Box> frames = new ArrayList<>();
        List<Box> texts = new ArrayList<>();
        for (Mark mark : page.marks()) {
            if (mark instanceof Mark.Stroke stroke) {
                frame(stroke).ifPresent(frames::add);
            } else if (mark instanceof Mark.Text text && text.turned() == 0 && !text.text().isBlank()) {
                texts.add(new Box(text.at().x(), text.at().y() - CAPITALS * text.points() * Typeface.POINT,
                        text.at().x() + face.width(face.printable(text.text()), text.points(), text.bold()),
                        text.at().y(), "'" + text.text() + "'"));
                if (text.points() < SMALLEST) {
                    found.add(where + text.text() + " is printed in " + text.points() + " points");
                }
            }
        }
        for (int i = 0; i < frames.size(); i++) {
            Box frame = frames.get(i);
            frames.subList(i + 1, frames.size()).stream()
                    .filter(each -> frame.meets(each) && !frame.holds(each) && !each.holds(frame))
                    .forEach(each -> found.add(where + frame + " crosses " + each));
            texts.stream().filter(each -> frame.meets(each) && !frame.holds(each))
                    .forEach(each -> found.add(where + each + " crosses " + frame));
        }
        for (int i = 0; i < texts.size(); i++) {
            Box text = texts.get(i);
            texts.subList(i + 1, texts.size()).stream().filter(text::meets)
                    .forEach(each -> found.add(where + text + " lies on " + each));
            if (text.left() < 0 || text.top() < 0 || text.right() > page.width() || text.bottom() > page.height()) {
                found.add(where + text + " leaves the page");
            }
        }
        return frames.size();
    }

    /** A closed line of four sides. */
    private static Optional<Box> frame(Mark.Stroke stroke) {
        List<Point> points = stroke.points();
        if (points.size() != 5 || points.getFirst().to(points.getLast()) > 1e-6) {
            return Optional.empty();
        }
        double left = points.stream().mapToDouble(Point::x).min().orElseThrow();
        double right = points.stream().mapToDouble(Point::x).max().orElseThrow();
        double top = points.stream().mapToDouble(Point::y).min().orElseThrow();
        double bottom = points.stream().mapToDouble(Point::y).max().orElseThrow();
        boolean upright = points.stream().allMatch(each -> (each.x() == left || each.x() == right)
                && (each.y() == top || each.y() == bottom));
        return upright ? Optional.of(new Box(left, top, right, bottom, "outline")) : Optional.empty();
    }
}
