// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
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
import org.loomwright.sheets.page.Pager;
import org.loomwright.sheets.page.Typeface;

/** The formboard drawing: an overview with its tables, then the board at full size sheet by sheet. */
final class FormboardSheet {

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
        List<Drawing> sheets = tiling.cut(board, face);
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
        blocks.add(new Block.Picture(overview(board), "Overview, not to scale"));
        blocks.add(new Grid("strands", Tables.columns("Trunk or branch", "From", "#At mm", "#Length mm", "To",
                "Ends in", "Vehicles"), strands(boarding)));
        blocks.add(new Grid("stations", Tables.columns("What", "Where", "#Station mm", "Mark"), stations(boarding)));
        blocks.add(new Grid("bundles", Tables.columns("Bundle on", "#From mm", "#To mm", "#Diameter mm", "#Wires"),
                boarding.bundles().stream().map(each -> Row.of(each.strand(), Words.figure(each.from(), 1),
                        Words.figure(each.to(), 1), each.diameter() > 0 ? Words.figure(each.diameter(), 1)
                                : "not known", Integer.toString(each.wires()))).toList()));
        sheets.forEach(each -> blocks.add(new Block.Sheet(each)));
        Document shell = empty(harness);
        return new Formboard(new Document(shell.name(), shell.title(), shell.subject(), true, blocks, List.of()),
                board);
    }

    /** The whole board, small, without its texts. */
    private static Drawing overview(Drawing board) {
        return new Drawing(board.width(), board.height(), board.marks().stream()
                .filter(each -> !(each instanceof org.loomwright.sheets.document.Mark.Text)).toList());
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
