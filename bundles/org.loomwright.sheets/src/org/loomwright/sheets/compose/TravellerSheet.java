// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.sheets.content.Continuity;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Block.Cell;
import org.loomwright.sheets.document.Block.Grid;
import org.loomwright.sheets.document.Block.Row;
import org.loomwright.sheets.document.Document;

/** The traveller: goes with one harness through the shop and holds its test results. */
final class TravellerSheet {

    private TravellerSheet() {
    }

    static Document of(Order order, LaidHarness harness) {
        Continuity continuity = Continuity.of(harness);
        long terminals = harness.pieces().stream().flatMap(each -> each.ends().stream())
                .filter(each -> !each.terminal().isEmpty()).count();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Grid("harness", Tables.columns("Harness", "Serial number", "Begun", "Finished"), List.of(
                Tables.row(Cell.of(harness.title() + " (" + harness.name() + "), " + order.title()
                        + (order.revision().isEmpty() ? "" : " revision " + order.revision())), Cell.box(),
                        Cell.box(), Cell.box()))));
        blocks.add(new Block.Heading("Operations"));
        List<Row> rows = new ArrayList<>();
        step(rows, "Cut, print and strip", harness.pieces().size() + " lines of the wire list");
        step(rows, "First pieces of every crimp", "crimp and splice sheet: height and pull written down");
        step(rows, "Crimp", terminals + " ends with a stated terminal");
        step(rows, "Splice and cover", harness.view().splices().size() + " splices");
        step(rows, "Lay on the board", "formboard drawing, printed ruler measured first");
        step(rows, "Breakouts, branches and stations measured", "within their tolerances");
        step(rows, "Cover, tape, clips and grommets", "formboard drawing");
        step(rows, "Insert, lock, seal, plug", harness.view().connectors().size() + " connectors, end views");
        step(rows, "Tags", "tags and labels");
        blocks.add(new Grid("operations", Tables.columns("Operation", "Against", "Date", "Sign"), rows));
        blocks.add(new Block.Heading("Test results"));
        List<Row> tests = new ArrayList<>();
        test(tests, "Continuity", continuity.checks().size() + " pairs of the continuity chart within their limits");
        test(tests, "Must not connect", "every net open against all others, " + continuity.openings().size()
                + " neighbours one by one");
        test(tests, "Pull on every terminal in its housing", "none moves");
        test(tests, "Looked at all over", "no bare strand, no nick, seals seated, locks shut");
        test(tests, "Meter, number and calibration date", "");
        blocks.add(new Grid("tests", Tables.columns("Test", "Asked", "Result", "Sign"), tests));
        blocks.add(new Block.Heading("Notes and rework"));
        blocks.add(new Block.Lines(4));
        return new Document(harness.name() + "-traveller", "Traveller", harness.title() + " (" + harness.name() + ")",
                false, blocks, List.of());
    }

    private static void step(List<Row> rows, String what, String by) {
        rows.add(Tables.row(Cell.of(what), Cell.of(by), Cell.box(), Cell.box()));
    }

    private static void test(List<Row> rows, String what, String asked) {
        rows.add(Tables.row(Cell.of(what), Cell.of(asked), Cell.box(), Cell.box()));
    }
}
