// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Section;
import org.loomwright.geometry.Spot;
import org.loomwright.harness.Location;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Shapes;

/** The parts that are placed on a drawing or harness, with where they sit on its tree. */
final class PlacedParts {

    /**
     * A placed part in some vehicles.
     *
     * @param placed the snapshot
     * @param part   its catalogue part
     * @param from   where it sits, or starts
     * @param to     where it ends; the same as {@code from} for a part at one spot
     * @param when   the vehicles
     */
    record At(Wiring.Placed placed, Part part, Spot from, Spot to, Condition when) {

        String name() {
            return placed.name().text();
        }

        /** Its lower and its upper station when it lies on one run and both are known. */
        Optional<Length[]> stretch() {
            Optional<Length> one = from.station().length();
            Optional<Length> other = to.station().length();
            return from.run().equals(to.run()) && one.isPresent() && other.isPresent()
                    ? Optional.of(new Length[] {one.get().min(other.get()), one.get().max(other.get())})
                    : Optional.empty();
        }
    }

    private PlacedParts() {
    }

    /** The placed parts that pass a test, in source order; one whose spot means nothing is left out. */
    static List<At> of(WiringView view, Shapes shapes, Predicate<Part> wanted) {
        HarnessTree tree = shapes.of(view).tree();
        List<At> all = new ArrayList<>();
        for (Wiring.Placed placed : view.wiring().placed()) {
            Optional<Part> part = shapes.part(placed.part()).filter(wanted);
            if (part.isEmpty()) {
                continue;
            }
            Condition when = view.platform().vehicles().resolve(placed.when()).condition().and(view.when());
            for (Case<Spot> from : tree.spots(placed.from())) {
                List<Case<Spot>> ends = placed.to().map(tree::spots).orElse(List.of(from));
                for (Case<Spot> to : ends) {
                    Condition there = when.and(from.when()).and(to.when());
                    if (!there.isNever()) {
                        all.add(new At(placed, part.get(), from.value(), to.value(), there));
                    }
                }
            }
        }
        return all;
    }

    /** The spot of a barrier. */
    static List<Case<Spot>> spots(HarnessTree tree, Run run, Run.Barrier barrier) {
        return spots(tree, run, barrier.at());
    }

    /** The spot of a station on a run. */
    static List<Case<Spot>> spots(HarnessTree tree, Run run, Measure station) {
        return tree.spots(new Location(Optional.empty(), Optional.of(Ref.of(run.name().text(), run.name().span())),
                Optional.of(station)));
    }

    /** True when a spot whose station is known lies in a section or at its ends. */
    static boolean holds(Section section, Spot spot) {
        return spot.run().equals(section.run()) && between(section.from(), spot, section.to());
    }

    /** True when a spot whose station is known lies under a placed part that lies on one run. */
    static boolean holds(At part, Spot spot) {
        return spot.run().equals(part.from().run()) && spot.run().equals(part.to().run())
                && (between(part.from(), spot, part.to()) || between(part.to(), spot, part.from()));
    }

    private static boolean between(Spot from, Spot spot, Spot to) {
        Optional<Length> station = spot.station().length();
        Optional<Length> low = from.station().length();
        Optional<Length> high = to.station().length();
        return station.isPresent() && low.isPresent() && high.isPresent()
                && low.get().compareTo(station.get()) <= 0 && station.get().compareTo(high.get()) <= 0;
    }
}
