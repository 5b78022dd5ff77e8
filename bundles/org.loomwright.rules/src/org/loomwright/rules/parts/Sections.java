// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.harness.link.Case;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.SizeSystem;

/**
 * The conductors that lie in one cavity together in some vehicles.
 *
 * @param sizes    their sizes, in order of cross-section
 * @param complete whether the size of each of them is known
 * @param when     the vehicles
 */
record Sections(List<ConductorSize> sizes, boolean complete, Condition when) {

    private record Key(List<ConductorSize> sizes, boolean complete) {
    }

    /**
     * Parts vehicles by what lies in a cavity in them. Sets of equal sizes are one, so that the number of sets grows
     * with a power of the number of wires, not exponentially.
     */
    static List<Sections> of(List<WireEnd> ends, Condition within) {
        Map<Key, Condition> sets = new LinkedHashMap<>();
        sets.put(new Key(List.of(), true), within);
        for (WireEnd end : ends) {
            Map<Key, Condition> next = new LinkedHashMap<>();
            sets.forEach((key, when) -> {
                add(next, key, when.minus(end.when()));
                Condition rest = when.and(end.when());
                for (Case<ConductorSize> size : end.wire().sizes()) {
                    add(next, with(key, size.value()), rest.and(size.when()));
                    rest = rest.minus(size.when());
                }
                add(next, new Key(key.sizes(), false), rest);
            });
            sets = next;
        }
        return sets.entrySet().stream().filter(each -> !each.getKey().sizes().isEmpty())
                .map(each -> new Sections(each.getKey().sizes(), each.getKey().complete(), each.getValue())).toList();
    }

    private static void add(Map<Key, Condition> sets, Key key, Condition when) {
        if (!when.isNever()) {
            sets.merge(key, when, Condition::or);
        }
    }

    private static Key with(Key key, ConductorSize size) {
        List<ConductorSize> sizes = new ArrayList<>(key.sizes());
        sizes.add(size);
        sizes.sort(null);
        return new Key(List.copyOf(sizes), key.complete());
    }

    /** The largest that could ever lie together: each wire at its thickest, in mm². */
    static double largest(List<WireEnd> ends) {
        return ends.stream().mapToDouble(end -> end.wire().sizes().stream()
                .mapToDouble(size -> size.value().areaMm2()).max().orElse(0)).sum();
    }

    /** The thinnest wire among them in mm²; no end of figures when no size is known. */
    static double smallest(List<WireEnd> ends) {
        return ends.stream().flatMap(end -> end.wire().sizes().stream())
                .mapToDouble(size -> size.value().areaMm2()).min().orElse(Double.POSITIVE_INFINITY);
    }

    /** Their section in mm², gauge sizes off by a share. */
    double area(double gauge) {
        return sizes.stream().mapToDouble(size -> size.areaMm2() * (isGauge(size) ? 1 + gauge : 1)).sum();
    }

    /** Whether one of them is a gauge size. */
    boolean gauged() {
        return sizes.stream().anyMatch(Sections::isGauge);
    }

    private static boolean isGauge(ConductorSize size) {
        return size.system() != SizeSystem.METRIC;
    }

    /** How their section comes about, for people. */
    String sum() {
        String terms = sizes.stream().map(size -> isGauge(size)
                ? size + " (" + Figure.of(size.areaMm2(), 2) + " mm2)" : size.toString())
                .collect(Collectors.joining(" + "));
        return sizes.size() == 1 ? terms : terms + " = " + Figure.of(area(0), 2) + " mm2";
    }
}
