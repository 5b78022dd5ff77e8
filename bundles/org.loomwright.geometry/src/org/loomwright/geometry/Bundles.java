// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.ConductorSize;

/**
 * Finds what lies together in each stretch of a harness and how thick it is.
 *
 * <p>All wires that some of the vehicles have are put together, each as thick as it is in any of them: the largest
 * bundle that can be. When that is too thick, ask again for fewer vehicles. A wire that ends at a station nobody knows
 * is in no section and is listed as lost.
 *
 * <p>Pure; O(spots log spots + the sum over wires of the sections that each runs through).
 */
public final class Bundles {

    private final BundleDiameter diameter = new BundleDiameter();

    /**
     * The bundles of a harness.
     *
     * @param sections run by run in source order, each in order along its run; those without a wire too
     * @param lost     wires whose way is not known in some of the vehicles
     */
    public record Result(List<Section> sections, List<WireView> lost) {

        public Result {
            sections = List.copyOf(sections);
            lost = List.copyOf(lost);
        }

        /** The sections of a run, in order along it. */
        public List<Section> on(String run) {
            return sections.stream().filter(each -> each.run().equals(run)).toList();
        }
    }

    /** A stretch of one run that a wire takes. */
    private record Stretch(int wire, Spot from, Spot to, Condition when) {
    }

    /**
     * The bundles in some vehicles.
     *
     * @param tree     the harness
     * @param wires    its wires, laid along the same tree
     * @param vehicles the vehicles asked for
     */
    public Result of(HarnessTree tree, List<RoutedWire> wires, Condition vehicles) {
        Map<String, List<Stretch>> stretches = new HashMap<>();
        List<WireView> lost = new ArrayList<>();
        for (int i = 0; i < wires.size(); i++) {
            RoutedWire wire = wires.get(i);
            boolean missing = !wire.lost().excludes(vehicles);
            for (RoutedWire.Run run : wire.routes()) {
                Condition when = run.when().and(vehicles);
                if (when.isNever()) {
                    continue;
                }
                for (Route.Leg leg : run.route().legs()) {
                    if (isNowhere(leg.from()) || isNowhere(leg.to())) {
                        missing = true;
                    } else {
                        stretches.computeIfAbsent(leg.run(), key -> new ArrayList<>())
                                .add(new Stretch(i, leg.from(), leg.to(), when));
                    }
                }
            }
            if (missing) {
                lost.add(wire.wire());
            }
        }
        List<Section> sections = new ArrayList<>();
        Diameters diameters = new Diameters();
        for (TreeRun run : tree.runs()) {
            sections(tree, run, wires, stretches.getOrDefault(run.name(), List.of()), diameters, sections);
        }
        return new Result(sections, lost);
    }

    private static boolean isNowhere(Spot spot) {
        return spot.kind() == Spot.Kind.STATION && !spot.station().isKnown();
    }

    private void sections(HarnessTree tree, TreeRun run, List<RoutedWire> wires, List<Stretch> stretches,
            Diameters diameters, List<Section> sections) {
        List<Spot> marks = marks(run, stretches);
        Map<Spot, Integer> index = new HashMap<>();
        for (Spot mark : marks) {
            index.put(mark, index.size());
        }
        List<Map<Integer, Condition>> through = new ArrayList<>();
        marks.forEach(mark -> through.add(new TreeMap<>()));
        for (Stretch stretch : stretches) {
            int from = Math.min(index.get(stretch.from()), index.get(stretch.to()));
            int to = Math.max(index.get(stretch.from()), index.get(stretch.to()));
            for (int i = from; i < to; i++) {
                through.get(i).merge(stretch.wire(), stretch.when(), Condition::or);
            }
        }
        Map<Integer, Section.Occupant> before = new HashMap<>();
        for (int i = 0; i + 1 < marks.size(); i++) {
            List<Section.Occupant> occupants = new ArrayList<>();
            through.get(i).forEach((wire, when) -> occupants.add(before.compute(wire, (key, known) ->
                    known != null && known.when().equals(when) ? known
                            : occupant(wires.get(wire).wire(), when, diameters))));
            double[] thick = occupants.stream().flatMap(each -> each.diameter().stream())
                    .mapToDouble(OutsideDiameter::mm).toArray();
            sections.add(new Section(run.name(), marks.get(i), marks.get(i + 1),
                    tree.between(marks.get(i), marks.get(i + 1)).abs(), occupants,
                    thick.length == 0 ? Optional.empty() : Optional.of(diameter.of(thick))));
        }
    }

    /** The points of a run, with the stations where wires end put in behind the last known point before each. */
    private static List<Spot> marks(TreeRun run, List<Stretch> stretches) {
        List<Spot> marks = new ArrayList<>(run.spots());
        stretches.stream().flatMap(each -> List.of(each.from(), each.to()).stream())
                .filter(each -> each.kind() == Spot.Kind.STATION).distinct()
                .sorted(Comparator.comparing((Spot each) -> each.station().length().orElseThrow())
                        .thenComparing(Spot::span).reversed())
                .forEach(spot -> {
                    int at = 1;
                    for (int i = 0; i < run.spots().size(); i++) {
                        Distance station = run.spots().get(i).station();
                        if (station.isKnown() && run.spots().get(i).kind() != Spot.Kind.END
                                && station.length().get().compareTo(spot.station().length().get()) <= 0) {
                            at = i + 1;
                        }
                    }
                    marks.add(at, spot);
                });
        return marks;
    }

    private static Section.Occupant occupant(WireView wire, Condition when, Diameters diameters) {
        Optional<ConductorSize> largest = Optional.empty();
        Optional<OutsideDiameter> thickest = Optional.empty();
        for (Case<ConductorSize> size : wire.sizes()) {
            Condition both = size.when().and(when);
            if (both.isNever()) {
                continue;
            }
            if (largest.isEmpty() || size.value().compareTo(largest.get()) > 0) {
                largest = Optional.of(size.value());
            }
            List<Optional<Part>> cables = new ArrayList<>();
            Condition rest = both;
            for (Case<Part> cable : wire.cables()) {
                if (!cable.when().excludes(both)) {
                    cables.add(Optional.of(cable.value()));
                    rest = rest.minus(cable.when());
                }
            }
            if (!rest.isNever()) {
                cables.add(Optional.empty());
            }
            for (Optional<Part> cable : cables) {
                OutsideDiameter diameter = diameters.of(cable, size.value());
                if (thickest.isEmpty() || diameter.mm() > thickest.get().mm()) {
                    thickest = Optional.of(diameter);
                }
            }
        }
        return new Section.Occupant(wire, largest, thickest, when);
    }
}
