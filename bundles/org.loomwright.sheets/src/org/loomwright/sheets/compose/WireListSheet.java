// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.loomwright.geometry.Copper;
import org.loomwright.harness.Part;
import org.loomwright.quantity.CutTolerance;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.OpenEnd;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.content.PieceEnd;
import org.loomwright.sheets.content.Reels;
import org.loomwright.sheets.content.Words;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Block.Cell;
import org.loomwright.sheets.document.Block.Column;
import org.loomwright.sheets.document.Block.Grid;
import org.loomwright.sheets.document.Block.Row;
import org.loomwright.sheets.document.Document;

/** The wire list: what is cut, printed and stripped, in the order of the bench: reel by reel, the longest first. */
final class WireListSheet {

    private static final List<Column> COLUMNS = List.of(Column.of("Wire"), Column.of("Function"), Column.of("Colour"),
            Column.figures("Cut mm"), Column.of("Tolerance mm"), Column.of("Print legend"),
            Column.figures("Pitch mm"), Column.of("From"), Column.of("Terminal, seal"), Column.figures("Strip mm"),
            Column.of("To"), Column.of("Terminal, seal"), Column.figures("Strip mm"), Column.of("Vehicles"));
    private static final List<Column> DATA = List.of(Column.of("wire"), Column.of("circuit"), Column.of("function"),
            Column.of("colour"), Column.of("size"), Column.of("cable"), Column.figures("cut length mm"),
            Column.figures("tolerance minus mm"), Column.figures("tolerance plus mm"), Column.of("length from"),
            Column.of("print legend"), Column.figures("legend pitch mm"), Column.of("from"),
            Column.of("from destination"), Column.of("from terminal"), Column.of("from seal"),
            Column.figures("from strip mm"), Column.of("to"), Column.of("to destination"), Column.of("to terminal"),
            Column.of("to seal"), Column.figures("to strip mm"), Column.of("vehicles"));
    private static final List<Column> TOTALS = List.of(Column.of("Cable"), Column.of("Size"), Column.of("Colour"),
            Column.figures("Pieces"), Column.figures("Length m"), Column.figures("Copper g"));

    private final LaidHarness harness;
    private final Reels reels;

    private WireListSheet(LaidHarness harness) {
        this.harness = harness;
        this.reels = Reels.of(harness.pieces(), Copper.HANDBOOK);
    }

    static Document of(LaidHarness harness) {
        return new WireListSheet(harness).document();
    }

    private Document document() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Grid("wire list", COLUMNS, rows()));
        blocks.add(new Block.Heading("Totals by reel"));
        Grid totals = new Grid("totals", TOTALS, totals());
        blocks.add(totals);
        blocks.add(new Block.Words("All cable " + Words.metres(reels.length()) + " m, all copper "
                + Words.figure(reels.copper(), 1) + " g (section x cut length x density; " + Copper.HANDBOOK.basis()
                + "). A wire that is made in several ways counts with its longest."
                + (reels.list().stream().anyMatch(Reels.Reel::unknown)
                        ? " Pieces whose length nobody knows are left out." : "")));
        blocks.add(new Block.Words("Cut lengths hold the allowances at both ends and are rounded up to the cutting"
                + " grid. The tolerance is that of the finished length between the terminals: "
                + CutTolerance.a620Metric().basis() + ", unless the source states one. An empty cell has no figure in"
                + " the sources: measure or look it up, never guess. \"ring\" goes on a stud, \"to fit\" on a pin of a"
                + " device: the crimp sheet says what."));
        return new Document(harness.name() + "-wire-list", "Wire list", harness.title() + " (" + harness.name() + ")",
                true, blocks, List.of(new Grid("wires", DATA, data()), totals));
    }

    private List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        String group = "";
        for (Reels.Reel reel : reels.list()) {
            String cable = reel.cable().isEmpty() ? "cable not stated"
                    : reel.cable() + ", " + Words.title(reel.cable(), harness.parts());
            String next = (reel.size().isEmpty() ? "size not stated" : reel.size()) + ", " + cable;
            if (!next.equals(group)) {
                rows.add(head(next));
                group = next;
            }
            for (Piece piece : reel.pieces()) {
                List<Cell> cells = new ArrayList<>();
                cells.add(Cell.of(piece.wire()));
                cells.add(Cell.of(piece.function()));
                cells.add(Cell.colour(piece.colour()));
                cells.add(Cell.of(piece.cut().map(Words::mm).orElse("not known")));
                cells.add(Cell.of(tolerance(piece)));
                cells.add(Cell.of(piece.legend()));
                cells.add(Cell.of(Words.mm(piece.pitch())));
                for (PieceEnd end : piece.ends()) {
                    cells.add(Cell.of((end.label() + " " + end.title()).strip()));
                    cells.add(Cell.of(inside(end)));
                    cells.add(Cell.of(strip(end)));
                }
                cells.add(Cell.of(harness.words(piece.when())));
                rows.add(new Row(cells, false));
            }
        }
        return rows;
    }

    private static Row head(String text) {
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.of(text));
        for (int i = 1; i < COLUMNS.size(); i++) {
            cells.add(Cell.of(""));
        }
        return new Row(cells, true);
    }

    private static String tolerance(Piece piece) {
        return piece.cut().isEmpty() ? "" : "-" + Words.mm(piece.tolerance().minus()) + " +"
                + Words.mm(piece.tolerance().plus());
    }

    private static String inside(PieceEnd end) {
        return String.join(", ", Stream.of(end.terminal(), OpenEnd.brief(end), end.seal(), end.method())
                .filter(each -> !each.isEmpty()).toList());
    }

    private String strip(PieceEnd end) {
        String part = end.terminal().isEmpty() ? end.method() : end.terminal();
        return harness.part(part).flatMap(each -> each.figure(Part.FigureKind.STRIP))
                .map(each -> Words.figure(each.from().si() * 1_000, 1)).orElse("");
    }

    private List<Row> data() {
        List<Row> rows = new ArrayList<>();
        for (Piece piece : harness.pieces()) {
            List<String> cells = new ArrayList<>(List.of(piece.wire(), piece.circuit(), piece.function(),
                    piece.colour(), piece.written(), piece.cable(), Words.mm(piece.cut())));
            cells.add(piece.cut().isEmpty() ? "" : Words.mm(piece.tolerance().minus()));
            cells.add(piece.cut().isEmpty() ? "" : Words.mm(piece.tolerance().plus()));
            cells.addAll(List.of(piece.measured(), piece.legend(), Words.mm(piece.pitch())));
            for (PieceEnd end : piece.ends()) {
                cells.addAll(List.of(end.label(), end.title(), end.terminal().isEmpty() ? end.method()
                        : end.terminal(), end.seal(), strip(end)));
            }
            cells.add(harness.words(piece.when()));
            rows.add(Row.of(cells.toArray(String[]::new)));
        }
        return rows;
    }

    private List<Row> totals() {
        List<Row> rows = new ArrayList<>();
        for (Reels.Reel reel : reels.list()) {
            rows.add(new Row(List.of(Cell.of(reel.cable()), Cell.of(reel.size()), Cell.colour(reel.colour()),
                    Cell.of(Integer.toString(reel.pieces().size())), Cell.of(Words.metres(reel.length())),
                    Cell.of(Words.figure(reel.copper(), 1))), false));
        }
        return rows;
    }
}
