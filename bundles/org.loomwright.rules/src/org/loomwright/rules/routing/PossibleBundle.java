// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.loomwright.condition.Cell;
import org.loomwright.condition.Cells;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.BundleDiameter;
import org.loomwright.geometry.BundleSize;
import org.loomwright.geometry.OutsideDiameter;
import org.loomwright.geometry.Section;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.ConductorSize;

/**
 * The bundles that different vehicles have in one stretch of a harness, held against a bore.
 *
 * <p>The largest bundle that may exist is tried first; only when it is too thick, the vehicles are parted by which
 * wires and thicknesses they have.
 */
final class PossibleBundle {

    /** One thickness that a wire can have. */
    private record Thickness(double leastMm, double usualMm, boolean estimated, Condition when) {
    }

    /**
     * Bundles that are, or may be, too thick.
     *
     * @param when      the vehicles
     * @param certain   true when they cannot be thin enough, however they are packed
     * @param least     the thickest of them, each wire as thin as it can be
     * @param usual     the same, each wire as thick as it is stated or estimated
     * @param estimated number of its wires whose thickness is estimated
     * @param wires     its wires: {@code 10 x 2.4 mm, 2 x 4 mm}
     */
    record TooThick(Condition when, boolean certain, BundleSize least, BundleSize usual, int estimated,
            String wires) {

        /** The same for other vehicles. */
        TooThick in(Condition vehicles) {
            return new TooThick(vehicles, certain, least, usual, estimated, wires);
        }
    }

    private final BundleDiameter diameter = new BundleDiameter();
    private final List<Thickness> all = new ArrayList<>();
    private final int most;
    private boolean bounded;

    /**
     * Prepares the bundles of a stretch.
     *
     * @param most the most different bundles that are told apart
     */
    PossibleBundle(Section section, int most) {
        this.most = most;
        section.wires().forEach(this::add);
    }

    private void add(Section.Occupant occupant) {
        WireView wire = occupant.wire();
        for (Case<ConductorSize> size : wire.sizes()) {
            Condition rest = size.when().and(occupant.when());
            for (Case<Part> cable : wire.cables()) {
                add(Optional.of(cable.value()), size.value(), rest.and(cable.when()));
                rest = rest.minus(cable.when());
            }
            add(Optional.empty(), size.value(), rest);
        }
    }

    private void add(Optional<Part> cable, ConductorSize size, Condition when) {
        if (!when.isNever()) {
            OutsideDiameter outside = OutsideDiameter.of(cable, size);
            all.add(new Thickness(outside.estimated() ? size.diameterMm() : outside.mm(), outside.mm(),
                    outside.estimated(), when));
        }
    }

    /** The bundles that are too thick for a bore in mm: first the certain ones, then those that may be. */
    List<TooThick> tooThick(double bore, Condition vehicles) {
        if (all.isEmpty() || usual(all).diameter().mm() <= bore) {
            return List.of();
        }
        Cells cells = vehicles.split(all.stream().map(Thickness::when).distinct().toList(), most);
        List<Condition> parts = cells.list().stream().map(Cell::vehicles).toList();
        if (!cells.complete()) {
            bounded = true;
            parts = List.of(vehicles);
        }
        Map<Boolean, TooThick> found = new LinkedHashMap<>();
        for (Condition part : parts) {
            List<Thickness> there = all.stream().filter(each -> !each.when().excludes(part)).toList();
            if (there.isEmpty() || usual(there).diameter().mm() <= bore) {
                continue;
            }
            BundleSize least = diameter.of(there.stream().mapToDouble(Thickness::leastMm).toArray());
            boolean certain = !bounded && least.bound().mm() > bore;
            TooThick thick = new TooThick(part, certain, least, usual(there),
                    (int) there.stream().filter(Thickness::estimated).count(), words(there));
            found.merge(certain, thick, PossibleBundle::thicker);
        }
        return found.values().stream().sorted((one, other) -> Boolean.compare(other.certain(), one.certain())).toList();
    }

    /** True when there were too many different bundles to tell them apart. */
    boolean isBounded() {
        return bounded;
    }

    private BundleSize usual(List<Thickness> there) {
        return diameter.of(there.stream().mapToDouble(Thickness::usualMm).toArray());
    }

    private static TooThick thicker(TooThick one, TooThick other) {
        TooThick thicker = other.usual().diameter().mm() > one.usual().diameter().mm() ? other : one;
        return thicker.in(one.when().or(other.when()));
    }

    private static String words(List<Thickness> there) {
        SortedMap<Double, Integer> counts = new TreeMap<>();
        there.forEach(each -> counts.merge(each.usualMm(), 1, Integer::sum));
        List<String> words = new ArrayList<>();
        counts.forEach((mm, count) -> words.add(count + " x " + mm(mm)));
        return String.join(", ", words);
    }

    /** A thickness to a tenth of a millimetre. */
    static String mm(double value) {
        return String.format(Locale.ROOT, "%.1f mm", value);
    }
}
