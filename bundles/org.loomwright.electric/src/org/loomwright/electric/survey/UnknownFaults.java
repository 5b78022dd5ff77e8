// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.network.Junction;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.thermal.Ratings;

/** Looks at what could not be solved, and at batteries of different voltage side by side. */
public final class UnknownFaults implements Inspector {

    /** Batteries side by side differ by at most this share of the greater voltage (common practice). */
    public static final double ALIKE = 0.05;
    private static final String RULE = "currents-not-known";

    @Override
    public List<Fault> inspect(OperatingPoint point, Fed fed, Ratings ratings) {
        List<Fault> faults = new ArrayList<>();
        for (OperatingPoint.Trouble trouble : point.troubles()) {
            if (trouble.piece() < 0) {
                faults.add(new Fault(RULE, near(point, trouble.words()), 3, trouble.words(), List.of(
                        "nothing is known of currents and voltages here: no other rule about them was asked"),
                        "look for a figure that cannot be, at this place or near it"));
            }
        }
        List<Piece> batteries = point.schematic().pieces().stream().filter(each -> each.role() == Role.BATTERY
                && point.conducts(each)).toList();
        for (int i = 0; point.solved() && i < batteries.size(); i++) {
            for (int j = i + 1; j < batteries.size(); j++) {
                together(point, fed, batteries.get(i), batteries.get(j), faults);
            }
        }
        return faults;
    }

    /** A piece at the place that is named, else the first of all. */
    private static Piece near(OperatingPoint point, String words) {
        Schematic schematic = point.schematic();
        List<Piece> there = new ArrayList<>();
        for (Piece piece : schematic.pieces()) {
            if (point.conducts(piece) && (named(words, piece.from()) || named(words, piece.to()))) {
                there.add(piece);
            }
        }
        return there.stream().filter(each -> !each.role().passes()).findFirst().or(() -> there.stream().findFirst())
                .orElse(schematic.pieces().getFirst());
    }

    private static boolean named(String words, Junction junction) {
        return words.endsWith(" " + junction);
    }

    private static void together(OperatingPoint point, Fed fed, Piece one, Piece other, List<Fault> faults) {
        double first = ((Model.Accumulator) one.model()).volts();
        double second = ((Model.Accumulator) other.model()).volts();
        boolean apart = Math.abs(first - second) > ALIKE * Math.max(first, second);
        if (apart && fed.joins(point.schematic().from(one), point.schematic().from(other))) {
            faults.add(new Fault(RULE, other, 2, one.subject().label() + " of " + Figure.of(first, 1) + " V and "
                    + other.subject().label() + " of " + Figure.of(second, 1) + " V lie side by side: "
                    + Figure.of(Math.max(point.amps(one), point.amps(other)), 1) + " A flow back into the weaker",
                    List.of("batteries side by side differ by at most 5 % (common practice)"),
                    "give both the same voltage, or part them by a switch or a diode"));
        }
    }
}
