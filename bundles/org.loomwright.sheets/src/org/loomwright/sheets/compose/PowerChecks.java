// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.loomwright.harness.link.Node;
import org.loomwright.sheets.content.Continuity;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Readings;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Block.Cell;
import org.loomwright.sheets.document.Block.Grid;
import org.loomwright.sheets.document.Block.Row;

/** What is measured before power is switched on and after, with what the meter should show. */
final class PowerChecks {

    private PowerChecks() {
    }

    static List<Block> of(Order order) {
        List<Block> blocks = new ArrayList<>();
        Optional<Readings> readings = Readings.of(order);
        before(order, readings, blocks);
        after(order, readings, blocks);
        return blocks;
    }

    private static void before(Order order, Optional<Readings> readings, List<Block> blocks) {
        blocks.add(new Block.Heading("Before power is switched on"));
        blocks.add(new Block.Words("Battery disconnected, all fuses out, every lamp and unit plugged in as described,"
                + " switches off. Null the meter's leads."));
        List<Row> rows = new ArrayList<>();
        for (LaidHarness harness : order.harnesses()) {
            for (Continuity.Check check : Continuity.of(harness).checks()) {
                if (check.to().kind() == Node.Kind.STUD) {
                    rows.add(row(check.from().label(), "bare metal beside " + check.to().label(),
                            ContinuitySheet.hand(check), harness.words(check.when())));
                }
            }
        }
        String volts = order.platform().platform().supply().map(each -> each.voltage().written()).orElse("supply");
        rows.add(row("battery posts, before it is connected", "each other",
                "no less than " + volts + " for a " + volts + " battery", "all"));
        rows.add(row("insulated lead of the battery, disconnected", "bare metal",
                "not below 1 Ω; a reading near 0 is a short: stop and find it", "all"));
        readings.flatMap(Readings::drain).ifPresent(drain -> rows.add(row(
                "meter for current between the battery's ground post and its lead, fuses in, key off, doors shut",
                "ground lead", "about " + current(drain) + "; much more means that something is on: stop and find it",
                "all")));
        blocks.add(new Grid("checks", Tables.columns("One lead on", "The other on", "Expected", "Vehicles", "Read"),
                rows));
    }

    private static Row row(String one, String other, String expected, String vehicles) {
        return Tables.row(Cell.of(one), Cell.of(other), Cell.of(expected), Cell.of(vehicles), Cell.box());
    }

    private static String current(double amps) {
        return amps < 1 ? String.format(Locale.ROOT, "%.0f mA", amps * 1000) : figure(amps, "A");
    }

    private static String figure(double value, String unit) {
        return String.format(Locale.ROOT, "%.1f %s", value, unit);
    }

    private static void after(Order order, Optional<Readings> readings, List<Block> blocks) {
        blocks.add(new Block.Heading("When power is on"));
        blocks.add(new Block.Words("Connect the battery's ground last. Put the fuses in one by one and try each"
                + " function before the next one. Feel every splice, plug and ground after ten minutes of full load:"
                + " none may be hot."));
        List<Readings.AtLoad> loads = readings.map(Readings::loads).orElse(List.of());
        if (loads.isEmpty()) {
            blocks.add(new Block.Words(readings.isEmpty() ? "Volts and amps under load are not given here: these"
                    + " vehicles are not wired alike. Make the sheets for one vehicle to have them."
                    : "Volts and amps under load are not given here: no load of these vehicles could be computed."));
        } else {
            blocks.add(new Block.Words("The engine stands. Expected volts are those across the load with its plug in,"
                    + " from a full battery at rest, wires at the warmth that the current gives them. A tired battery"
                    + " takes the same from all of them. One load alone that has 0.5 V less names a bad contact on its"
                    + " way (common practice)."));
            List<Row> rows = new ArrayList<>();
            String mode = "";
            for (Readings.AtLoad load : loads) {
                if (!load.mode().equals(mode)) {
                    mode = load.mode();
                    rows.add(Tables.group("Switches as for: " + mode, 4));
                }
                rows.add(Tables.row(Cell.of(load.load()), Cell.of(figure(load.volts(), "V")),
                        Cell.of(current(load.amps())), Cell.box()));
            }
            blocks.add(new Grid("loads", Tables.columns("Across", "#Expected volts", "#Its current", "Read"), rows));
        }
        Set<String> functions = new LinkedHashSet<>();
        order.harnesses().forEach(each -> each.pieces().forEach(piece -> functions.add(piece.function())));
        functions.remove("");
        blocks.add(new Grid("functions", Tables.columns("Function", "Works", "Remarks"), functions.stream()
                .map(each -> Tables.row(Cell.of(each), Cell.box(), Cell.box())).toList()));
    }
}
