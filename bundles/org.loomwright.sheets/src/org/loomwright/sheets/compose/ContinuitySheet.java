// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.quantity.Metal;
import org.loomwright.sheets.content.Continuity;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Words;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Block.Cell;
import org.loomwright.sheets.document.Block.Grid;
import org.loomwright.sheets.document.Block.Row;
import org.loomwright.sheets.document.Document;

/** The continuity chart: from, to, expected ohms with limits, and pairs that must not connect. */
final class ContinuitySheet {

    /** What one good crimp or splice may add, in ohm; common practice. */
    private static final double JOINT = 0.005;
    /** Strand, stranding and temperature of the workshop; common practice. */
    private static final double SPREAD = 0.10;
    /** A hand meter's last digit, and what its leads still show when they are nulled. */
    private static final double DIGIT = 0.1;

    private ContinuitySheet() {
    }

    static Document of(LaidHarness harness) {
        Continuity continuity = Continuity.of(harness);
        List<Row> rows = new ArrayList<>();
        List<Row> data = new ArrayList<>();
        String group = "";
        for (Continuity.Check check : continuity.checks()) {
            if (!check.from().element().equals(group)) {
                group = check.from().element();
                rows.add(Tables.group("From " + group + " " + title(harness, group), 9));
            }
            String vehicles = harness.words(check.when());
            String wires = String.join(" ", check.wires());
            String least = milliohms(check.ohms().map(each -> each * (1 - SPREAD)));
            String most = milliohms(check.ohms().map(each -> most(each, check.joints())));
            rows.add(Tables.row(Cell.of(check.from().label()), Cell.of(check.to().label()), Cell.of(wires),
                    Cell.of(milliohms(check.ohms())), Cell.of(least.isEmpty() ? "" : least + " to " + most),
                    Cell.of(hand(check)), Cell.of(vehicles), Cell.box(), Cell.box()));
            data.add(Row.of(check.from().label(), check.to().label(), wires, milliohms(check.ohms()), least, most,
                    hand(check), vehicles));
        }
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Words("Nothing plugged in: fuses, links, relays and bulbs out, ring terminals free."
                + " Null the leads of a hand meter first. It cannot see milliohms: the figures are for a 4-wire meter,"
                + " or for the voltage at a known current."));
        blocks.add(new Grid("continuity", Tables.columns("From", "To", "By wires", "#Expected mΩ", "Limits mΩ",
                "Hand meter", "Vehicles", "Read", "Sign"), rows));
        blocks.add(new Block.Words("Expected: conductors at 20 C, " + Metal.COPPER.basis() + ", length x section."
                + " Limits: 10 % either way for strands and workshop temperature, and up to 5 mΩ for each crimp and"
                + " splice on the way (common practice)."));
        blocks.add(new Block.Heading("Pairs that must not connect"));
        blocks.add(new Block.Words("From each end in the chart above to every other net, and to a bare metal board:"
                + " open, more than 1 MΩ." + (continuity.openings().isEmpty()
                ? " No two wired cavities that are to stay apart are neighbours in one housing."
                : " Above all these neighbours in one housing:")));
        List<Row> open = new ArrayList<>();
        for (Continuity.Opening each : continuity.openings()) {
            open.add(Tables.row(Cell.of(each.one().label()), Cell.of(each.other().label()), Cell.of("open, > 1 MΩ"),
                    Cell.of(harness.words(each.when())), Cell.box()));
        }
        if (!open.isEmpty()) {
            blocks.add(new Grid("must not connect", Tables.columns("From", "To", "Expected", "Vehicles", "Read"),
                    open));
        }
        List<Row> apart = continuity.openings().stream().map(each -> Row.of(each.one().label(), each.other().label(),
                harness.words(each.when()))).toList();
        return new Document(harness.name() + "-continuity", "Continuity chart",
                harness.title() + " (" + harness.name() + ")", false, blocks,
                List.of(new Grid("continuity", Tables.columns("from", "to", "wires", "#expected mohm", "#least mohm",
                        "#most mohm", "hand meter", "vehicles"), data),
                        new Grid("must not connect", Tables.columns("from", "to", "vehicles"), apart)));
    }

    private static double most(double ohms, int joints) {
        return ohms * (1 + SPREAD) + JOINT * joints;
    }

    private static String milliohms(Optional<Double> ohms) {
        return ohms.map(each -> Words.fixed(each * 1_000, 1)).orElse("");
    }

    static String hand(Continuity.Check check) {
        return check.ohms().map(each -> "up to " + Words.fixed(
                (Math.ceil(most(each, check.joints()) / DIGIT) + 1) * DIGIT, 1) + " Ω, nulled").orElse("conducts");
    }

    private static String title(LaidHarness harness, String element) {
        return harness.pieces().stream().flatMap(each -> each.ends().stream())
                .filter(end -> end.node().element().equals(element)).map(end -> end.title()).findFirst().orElse("");
    }
}
