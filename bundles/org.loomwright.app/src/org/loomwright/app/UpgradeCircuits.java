// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.loomwright.app.SolveCircuits.Solved;
import org.loomwright.condition.Axis;
import org.loomwright.condition.Condition;
import org.loomwright.electric.mode.Engine;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.solve.Element;
import org.loomwright.electric.survey.Fault;
import org.loomwright.electric.survey.Fed;
import org.loomwright.electric.survey.Inspector;
import org.loomwright.electric.survey.Inspectors;
import org.loomwright.harness.link.Project;

/** Solves one vehicle without and with each upgrade that it can have, over all modes. */
public final class UpgradeCircuits {

    private UpgradeCircuits() {
    }

    /**
     * One upgrade with one set of harnesses.
     *
     * @param upgrade its name
     * @param before  the vehicle without it
     * @param after   the vehicle with it, and with what it requires
     * @param fitted  what is fitted, in words
     * @param lamp    the least share of its design voltage at a lamp while the engine runs
     * @param wire    the greatest share of its ampacity in a wire that may carry anything where it lies
     * @param fuse    the greatest share of its rating in a fuse
     * @param battery the greatest current in A that the battery gives while the engine runs
     * @param gained  faults that it brings, by what they are about
     * @param lost    faults that it mends
     */
    public record Upgraded(String upgrade, String before, String after, String fitted, Change lamp, Change wire,
            Change fuse, Change battery, List<Fault> gained, List<Fault> lost) {

        public Upgraded {
            gained = List.copyOf(gained);
            lost = List.copyOf(lost);
        }
    }

    /** A figure before and after; not a number where nothing has it. */
    public record Change(double before, double after) {
    }

    /**
     * Compares the vehicle of some choices without and with each upgrade of its platform.
     *
     * @throws BadCall for a vehicle that does not exist
     */
    public static List<Upgraded> of(Project project, String words) throws BadCall {
        List<Upgraded> all = new ArrayList<>();
        List<Schematic> schematics = Schematic.of(project);
        List<String> upgrades = SolveCircuits.of(project, schematics, words, "keyOff").getFirst().schematic().fitment()
                .platform().vehicles().choices().axes().stream().filter(axis -> axis.kind() == Axis.Kind.UPGRADE)
                .map(Axis::name).toList();
        Map<Condition, List<Solved>> known = new HashMap<>();
        for (String upgrade : upgrades) {
            List<Solved> before;
            List<Solved> after;
            try {
                before = solve(project, schematics, words + " not " + upgrade, known);
                after = solve(project, schematics, words + " " + upgrade, known);
            } catch (BadCall e) {
                continue;
            }
            for (Solved one : before) {
                for (Solved other : after) {
                    if (one.schematic() == other.schematic() || one.schematic().fitment().words()
                            .equals(other.schematic().fitment().words())) {
                        all.add(compare(upgrade, one, other));
                    }
                }
            }
        }
        return List.copyOf(all);
    }

    /** Several upgrades begin from the same vehicle, which is solved once. */
    private static List<Solved> solve(Project project, List<Schematic> schematics, String words,
            Map<Condition, List<Solved>> known) throws BadCall {
        Condition vehicle = SolveCircuits.first(project, words);
        List<Solved> solved = known.get(vehicle);
        if (solved == null) {
            solved = SolveCircuits.of(project, schematics, words, "");
            known.put(vehicle, solved);
        }
        return solved;
    }

    private static Upgraded compare(String upgrade, Solved before, Solved after) {
        Map<String, Fault> old = faults(before);
        Map<String, Fault> now = faults(after);
        List<Fault> gained = now.entrySet().stream().filter(each -> !old.containsKey(each.getKey()))
                .map(Map.Entry::getValue).toList();
        List<Fault> lost = old.entrySet().stream().filter(each -> !now.containsKey(each.getKey()))
                .map(Map.Entry::getValue).toList();
        return new Upgraded(upgrade, before.words(), after.words(), before.schematic().fitment().words(),
                change(before, after, UpgradeCircuits::lamp, true),
                change(before, after, UpgradeCircuits::wire, false),
                change(before, after, UpgradeCircuits::fuse, false),
                change(before, after, (solved, point) -> point.mode().engine().runs() ? battery(point) : Double.NaN,
                        false), gained, lost);
    }

    private interface Figure {
        double of(Solved solved, OperatingPoint point);
    }

    private static Change change(Solved before, Solved after, Figure figure, boolean least) {
        return new Change(extreme(before, figure, least), extreme(after, figure, least));
    }

    private static double extreme(Solved solved, Figure figure, boolean least) {
        double best = Double.NaN;
        for (OperatingPoint point : solved.points()) {
            double value = point.solved() ? figure.of(solved, point) : Double.NaN;
            best = Double.isNaN(best) || (least ? value < best : value > best) ? value : best;
        }
        return best;
    }

    private static double most(OperatingPoint point, Role role, ToDoubleFunction<Piece> share) {
        return point.schematic().pieces().stream().filter(each -> each.role() == role && point.conducts(each))
                .mapToDouble(share).filter(Double::isFinite).max().orElse(Double.NaN);
    }

    private static double lamp(Solved solved, OperatingPoint point) {
        Fed fed = new Fed(point);
        return !point.mode().engine().runs() ? Double.NaN : -most(point, Role.LOAD, each -> fed.works(each)
                && each.model() instanceof Model.Working working && working.element() instanceof Element.Filament
                        ? -point.share(each) : Double.NaN);
    }

    private static double wire(Solved solved, OperatingPoint point) {
        return point.mode().engine() == Engine.CRANK ? Double.NaN : most(point, Role.WIRE,
                each -> Math.abs(point.amps(each)) < 1e-3 || !(each.model() instanceof Model.Copper)
                        || solved.ratings().around(each).classC().isEmpty() ? Double.NaN
                        : solved.ratings().allowed(each, solved.vehicle(), point.currents())
                                .map(allowed -> Math.abs(point.amps(each)) / allowed.amps()).orElse(Double.NaN));
    }

    private static double fuse(Solved solved, OperatingPoint point) {
        return most(point, Role.FUSE, each -> each.rating() > 0 ? Math.abs(point.amps(each)) / each.rating()
                : Double.NaN);
    }

    private static double battery(OperatingPoint point) {
        return point.schematic().pieces().stream().filter(each -> each.role() == Role.BATTERY)
                .mapToDouble(each -> -point.amps(each)).sum();
    }

    private static Map<String, Fault> faults(Solved solved) {
        Map<String, Fault> all = new LinkedHashMap<>();
        for (OperatingPoint point : solved.points()) {
            Fed fed = new Fed(point);
            for (Inspector inspector : Inspectors.all()) {
                inspector.inspect(point, fed, solved.ratings()).stream().filter(each -> each.memory().isEmpty())
                        .forEach(each -> all.merge(each.key(), each, (one, other) -> other.weight() > one.weight()
                                ? other : one));
            }
        }
        Map<String, Fault> sorted = new LinkedHashMap<>();
        all.entrySet().stream().sorted(Comparator.comparing(Map.Entry::getKey))
                .forEach(each -> sorted.put(each.getKey(), each.getValue()));
        return sorted;
    }
}
