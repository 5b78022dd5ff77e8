// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.loomwright.harness.Limit;
import org.loomwright.sheets.board.Strand;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Words;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Block.Cell;
import org.loomwright.sheets.document.Block.Grid;
import org.loomwright.sheets.document.Block.Row;
import org.loomwright.sheets.document.Document;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Mark.Stroke;
import org.loomwright.sheets.document.Mark.Text;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.page.Pager;
import org.loomwright.sheets.page.Typeface;

/** The formboard drawing: an overview with its tables, then the board at full size sheet by sheet. */
final class FormboardSheet {

    /** Room for what stands above and below the overview, in mm. */
    private static final double BESIDE = 40;

    /** Points of the line around a box. */
    private static final int OUTLINE = 5;
    /** Size in points of the number of a sheet in the overview. */
    private static final double TAG = 8.5;

    private FormboardSheet() {
    }

    /** A document without content, to ask what room its pages have. */
    static Document empty(LaidHarness harness) {
        return new Document(harness.name() + "-formboard", "Formboard drawing, full size",
                harness.title() + " (" + harness.name() + ")", true, List.of(), List.of());
    }

    static Formboard of(LaidHarness harness, Pager.Room room, double width, double height, Typeface face) {
        Boarding boarding = Boarding.of(harness, width, height);
        Tiling tiling = new Tiling(room.width(), room.height());
        Drawing board = BoardDrawing.of(boarding, face, tiling);
        List<Tiling.Sheet> sheets = tiling.cut(board, face);
        List<Block> blocks = new ArrayList<>();
        String size = Words.figure(Math.ceil(boarding.board().width()), 0) + " x "
                + Words.figure(Math.ceil(boarding.board().height()), 0) + " mm";
        blocks.add(new Block.Words(boarding.board().fits() ? "Fits a board of " + Words.figure(width, 0) + " x "
                + Words.figure(height, 0) + " mm, of which it takes " + size + "."
                : "A board of " + Words.figure(width, 0) + " x " + Words.figure(height, 0)
                        + " mm is too small for it; one of " + size + " would do, and is drawn."));
        blocks.add(new Block.Words("Full size on " + sheets.size() + " sheets, of " + tiling.rows(board.height())
                + " rows and " + tiling.columns(board.width()) + " columns; those with nothing on them are left out."
                + " Print at 100 %, measure the ruler on every sheet,"
                + " lay crosses on crosses. Lengths run along the thin line in the middle of each bundle; bundles are"
                + " drawn as thick as they are. Bends have at least " + Words.figure(harness.view().platform().limits()
                        .si(Limit.BEND_RADIUS), 1) + " times the diameter of the thickest wire."));
        double scale = Math.min(1, Math.min(room.width() / board.width(), (room.height() - BESIDE) / board.height()));
        blocks.add(new Block.Picture(overview(board, sheets, tiling, face, scale), "Overview, not to scale. Where there"
                + " is a sheet, its row and column stand in its corner."));
        blocks.add(new Grid("strands", Tables.columns("Trunk or branch", "From", "#At mm", "#Length mm", "To",
                "Ends in", "Vehicles"), strands(boarding)));
        blocks.add(new Grid("stations", Tables.columns("What", "Where", "#Station mm", "Mark"), stations(boarding)));
        blocks.add(new Grid("bundles", Tables.columns("Bundle on", "#From mm", "#To mm", "#Diameter mm", "#Wires"),
                boarding.bundles().stream().map(each -> Row.of(each.strand(), Words.figure(each.from(), 1),
                        Words.figure(each.to(), 1), each.diameter() > 0 ? Words.figure(each.diameter(), 1)
                                : "not known", Integer.toString(each.wires()))).toList()));
        sheets.forEach(each -> blocks.add(new Block.Sheet(each.drawing())));
        Document shell = empty(harness);
        return new Formboard(new Document(shell.name(), shell.title(), shell.subject(), true, blocks, List.of()),
                board);
    }

    /** The whole board, small, without its texts, but with the sheets of paper. */
    private static Drawing overview(Drawing board, List<Tiling.Sheet> sheets, Tiling tiling, Typeface face,
            double scale) {
        List<Mark> marks = new ArrayList<>();
        LabelRoom taken = taken(board, scale);
        for (Tiling.Sheet sheet : sheets) {
            double x = sheet.corner().x();
            double y = sheet.corner().y();
            double right = Math.min(board.width(), x + tiling.width());
            double bottom = Math.min(board.height(), y + tiling.bottom());
            marks.add(new Stroke(List.of(new Point(right, y), new Point(x, y), new Point(x, bottom)), 0.15 / scale,
                    Ink.GREY, 1 / scale));
            String number = sheet.row() + "." + sheet.column();
            double wide = face.width(number, TAG / scale, false);
            Stream.of(new Point(x + 1 / scale, y + 3.6 / scale), new Point(right - wide - 2 / scale, y + 3.6 / scale),
                    new Point(x + 1 / scale, bottom - 1.4 / scale),
                    new Point(right - wide - 2 / scale, bottom - 1.4 / scale)).filter(at -> taken.isFree(
                    new LabelRoom.Box(at.x() - 0.5 / scale, at.y() - 3 / scale, at.x() + wide + 0.5 / scale,
                            at.y() + 0.5 / scale))).findFirst()
                    .ifPresent(at -> marks.add(new Text(at, TAG / scale, false, number)));
        }
        board.marks().stream().filter(each -> !(each instanceof Text)).forEach(marks::add);
        return new Drawing(board.width(), board.height(), marks);
    }

    /** Where bundles and outlines leave no room for the number of a sheet. */
    private static LabelRoom taken(Drawing board, double scale) {
        LabelRoom taken = new LabelRoom(box -> box.left() > 0.5 / scale && box.right() < board.width() - 0.5 / scale
                && box.top() > 0 && box.bottom() < board.height());
        board.marks().stream().filter(each -> each instanceof Stroke stroke && (stroke.ink().equals(
                BoardDrawing.BUNDLE) || stroke.points().size() == OUTLINE)).map(Stroke.class::cast)
                .skip(1).forEach(each -> taken.take(each.points(), each.width() / 2));
        return taken;
    }

    private static List<Row> strands(Boarding boarding) {
        List<Row> rows = new ArrayList<>();
        LaidHarness harness = boarding.harness();
        for (Strand strand : boarding.strands()) {
            String to = harness.view().run(strand.name()).flatMap(run -> run.to()).map(ref -> harness.place(ref.text()))
                    .orElse("");
            String vehicles = harness.tree().run(strand.name()).map(run -> harness.words(run.when())).orElse("");
            boolean guessed = boarding.guessed().contains(strand.name());
            rows.add(Tables.row(Cell.of(strand.name()), Cell.of(strand.parent().isEmpty() ? "datum" : strand.parent()),
                    Cell.of(guessed ? "" : Words.figure(strand.station(), 1)),
                    Cell.of(guessed ? "not known" : Words.figure(strand.length(), 1)), Cell.of(to),
                    Cell.of(String.join(", ", boarding.ends().getOrDefault(strand.name(), List.of()))),
                    Cell.of(vehicles)));
        }
        return rows;
    }

    private static List<Row> stations(Boarding boarding) {
        return boarding.marks().stream().sorted(Comparator.comparing(Boarding.Mark::strand)
                .thenComparingDouble(Boarding.Mark::station)).map(each -> Row.of(switch (each.sort()) {
                    case DATUM -> "datum";
                    case BREAKOUT -> "breakout";
                    case SPLICE -> "splice";
                    case CLIP -> "clip or other piece";
                    case COVER_BEGIN -> "covering begins";
                    case COVER_END -> "covering ends";
                    case BARRIER -> "opening or barrier";
                }, each.strand(), Words.figure(each.station(), 1), each.text())).toList();
    }
}
