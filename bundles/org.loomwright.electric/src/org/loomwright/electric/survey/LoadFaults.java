// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.ampacity.Gauges;
import org.loomwright.electric.mode.Engine;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.Trail;
import org.loomwright.electric.solve.Element;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Part;

/** Looks at what loads get: too little or too much voltage, what is lost on the way, current that nobody meant. */
public final class LoadFaults implements Inspector {

    /** The rules whose faults are held against a limit that a project may set, and that limit. */
    private static final Map<String, Limit> LIMITS = Map.of("lamp-too-dim", Limit.LAMP_AT_LEAST, "lamp-over-voltage",
            Limit.LAMP_AT_MOST, "sneak-path", Limit.SNEAK, "drain-with-key-off", Limit.DRAIN, "intended-return-lost",
            Limit.RETURNS, "no-excitation", Limit.EXCITATION);

    /** Returns the limit of a project that a fault is held against; empty where there is none. */
    public static Optional<Limit> limit(Fault fault) {
        return fault.rule().equals("drop-too-high") ? Optional.of(isHeadlamp(fault.piece()) ? Limit.HEADLAMP_DROP
                : Limit.LOAD_DROP) : Optional.ofNullable(LIMITS.get(fault.rule()));
    }

    @Override
    public List<Fault> inspect(OperatingPoint point, Fed fed, Ratings ratings) {
        List<Fault> faults = new ArrayList<>();
        if (!point.solved()) {
            return faults;
        }
        for (Piece piece : point.schematic().pieces()) {
            if (piece.role() == Role.LOAD && point.conducts(piece) && piece.model() instanceof Model.Working working) {
                load(point, fed, piece, working, faults);
            }
        }
        return faults;
    }

    private static void load(OperatingPoint point, Fed fed, Piece piece, Model.Working working, List<Fault> faults) {
        Limits limits = point.schematic().fitment().platform().limits();
        boolean works = fed.works(piece);
        boolean lamp = working.element() instanceof Element.Filament;
        double share = point.share(piece);
        if (works && lamp && point.mode().engine().runs() && share < limits.si(Limit.LAMP_AT_LEAST)) {
            faults.add(new Fault("lamp-too-dim", piece, limits.si(Limit.LAMP_AT_LEAST) - share,
                    piece.subject().label() + " gets " + percent(share) + " of its design voltage",
                    steps(point, piece, working, true),
                    "shorten or thicken its wires, clean its contacts, or feed it by a relay"));
        }
        if (works && lamp && share > limits.si(Limit.LAMP_AT_MOST)) {
            faults.add(new Fault("lamp-over-voltage", piece, share, piece.subject().label() + " gets " + percent(share)
                    + " of its design voltage", steps(point, piece, working, false),
                    "fit a lamp for this supply, or correct the voltage of the machine"));
        }
        if (works && point.mode().engine() != Engine.CRANK) {
            drop(point, piece, working, faults);
        }
        boolean declared = returns(piece);
        double current = Fed.currentShare(point, piece);
        if (!works && current > limits.si(Limit.SNEAK) && !declared) {
            Trail trail = Trail.throughLoads(point, piece);
            faults.add(new Fault("sneak-path", piece, current, piece.subject().label() + " is off and carries "
                    + percent(current) + " of its current all the same", List.of("the way: " + way(trail)),
                    "give what feeds it a ground of its own, or declare the return on the device: returns"));
        }
        boolean parked = point.mode().engine() == Engine.STOPPED && point.mode().name().equals("keyOff");
        if (parked && Math.abs(point.amps(piece)) > limits.si(Limit.DRAIN)) {
            faults.add(new Fault("drain-with-key-off", piece, Math.abs(point.amps(piece)),
                    piece.subject().label() + " takes " + Figure.of(Math.abs(point.amps(piece)), 2)
                            + " A with the key off",
                    List.of(limits.value(Limit.DRAIN) + " are allowed (" + limits.cite(Limit.DRAIN) + ")"),
                    "feed it behind the key, or state in which state it is off"));
        }
        boolean coil = piece.subject().part().flatMap(part -> part.word(Part.WordKind.TYPE))
                .filter("ignitionCoil"::equals).isPresent();
        if (point.mode().engine() == Engine.TURNING && coil && share > 0.3) {
            faults.add(new Fault("runs-on-after-key-off", piece, share, piece.subject().label() + " still gets "
                    + percent(share) + " of its design voltage when the key has been turned off", List.of("the way: "
                    + way(Trail.of(point, piece))), "let nothing lead from the machine to the ignition"));
        }
    }

    /** Returns whether a load is declared to return through others. */
    static boolean returns(Piece piece) {
        return piece.subject().device().filter(each -> each.device().returns()).isPresent();
    }

    private static boolean isHeadlamp(Piece piece) {
        return piece.subject().part().flatMap(part -> part.word(Part.WordKind.TYPE)).filter("headlamp"::equals)
                .isPresent();
    }

    /** Returns what a load may lose on its way, feed and return together, in V. */
    public static double dropLimit(OperatingPoint point, Piece load) {
        Limits limits = point.schematic().fitment().platform().limits();
        double nominal = point.schematic().nominal();
        return isHeadlamp(load) ? limits.si(Limit.HEADLAMP_DROP) * nominal / 12
                : limits.si(Limit.LOAD_DROP) * nominal;
    }

    /** Returns whether a ballast or a sender lies on the way of a load: it lowers the voltage on purpose. */
    public static boolean dropsOnPurpose(OperatingPoint point, Trail trail) {
        double least = point.schematic().fitment().platform().limits().si(Limit.DROPPING_RESISTANCE);
        return trail.steps().stream().anyMatch(step -> step.piece().subject().part()
                .filter(part -> part.kind() == Part.Kind.RESISTOR_CABLE).isPresent()
                || step.piece().model() instanceof Model.Fixed fixed && fixed.ohms() >= least);
    }

    private static void drop(OperatingPoint point, Piece piece, Model.Working working, List<Fault> faults) {
        Trail trail = Trail.of(point, piece);
        double lost = trail.feed() + trail.back();
        double limit = dropLimit(point, piece);
        if (lost > limit && !dropsOnPurpose(point, trail) && Fed.currentShare(point, piece) > 0.3) {
            List<String> steps = new ArrayList<>();
            trail.steps().stream().filter(step -> step.piece().role().passes())
                    .sorted((one, other) -> Double.compare(other.drop(), one.drop())).limit(6)
                    .forEach(step -> steps.add(Figure.of(step.drop() * 1000, 0) + " mV "
                            + step.piece().subject().label()
                            + ", " + Figure.of(step.amps(), 2) + " A"));
            thicker(trail, limit, lost).ifPresent(steps::add);
            faults.add(new Fault("drop-too-high", piece, lost / limit, piece.subject().label() + " loses "
                    + Figure.of(lost, 2) + " V on its way, " + Figure.of(limit, 2) + " V are allowed", steps,
                    "begin with what loses most"));
        }
    }

    /** The smallest gauges with which a load loses no more than it may, all wires on its way thickened alike. */
    private static Optional<String> thicker(Trail trail, double limit, double lost) {
        double inWires = trail.steps().stream().filter(step -> step.piece().model() instanceof Model.Copper)
                .mapToDouble(Trail.Step::drop).sum();
        double left = limit - (lost - inWires);
        if (left <= 0) {
            return Optional.of("contacts, switches and fuses alone lose " + Figure.of(lost - inWires, 2)
                    + " V: no gauge mends that");
        }
        List<String> sizes = new ArrayList<>();
        for (Trail.Step step : trail.steps()) {
            if (step.piece().model() instanceof Model.Copper copper) {
                double area = copper.size().areaMm2() * inWires / left;
                Gauges.smallest(copper.size().system(), size -> size.areaMm2() >= area)
                        .filter(size -> step.drop() > 0.02 * inWires && !size.equals(copper.size()))
                        .ifPresent(size -> sizes.add(step.piece().subject().element() + " " + size));
            }
        }
        return sizes.isEmpty() ? Optional.empty()
                : Optional.of("smallest gauges that keep the limit together: " + String.join(", ", sizes));
    }

    private static List<String> steps(OperatingPoint point, Piece piece, Model.Working working, boolean dim) {
        List<String> steps = new ArrayList<>();
        steps.add(Figure.of(point.volts(piece), 2) + " V of " + Figure.of(working.volts(), 1) + " V at "
                + Figure.of(Math.abs(point.amps(piece)), 2) + " A");
        if (dim) {
            steps.add("relative light " + percent(Math.pow(Math.max(0, point.share(piece)), 3.4))
                    + " (voltage to the power of 3.4, Fink and Beaty, p. 22-8)");
            Trail trail = Trail.of(point, piece);
            steps.add("lost on the way: " + Figure.of(trail.feed(), 2) + " V in the feed, "
                    + Figure.of(trail.back(), 2) + " V in the return");
        }
        return steps;
    }

    static String way(Trail trail) {
        List<String> names = new ArrayList<>();
        for (Trail.Step step : trail.steps()) {
            boolean told = step.piece().subject().wire().isPresent() && !step.piece().role().touches()
                    || !step.piece().role().passes();
            if (told && (names.isEmpty() || !names.getLast().equals(step.piece().subject().label()))) {
                names.add(step.piece().subject().label());
            }
        }
        return String.join(" - ", names);
    }

    static String percent(double share) {
        return Figure.of(share * 100, 0) + " %";
    }
}
