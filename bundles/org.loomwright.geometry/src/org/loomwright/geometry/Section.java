// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Length;

/**
 * A stretch of a run through which the same wires go: between two points, splices or other spots where a wire ends.
 *
 * @param run    the trunk or branch
 * @param from   the spot nearer to the start of the run
 * @param to     the next spot
 * @param length its length
 * @param wires  what runs through all of it in some of the vehicles asked for, in source order
 * @param size   how thick they are together; empty when no wire has a size
 */
public record Section(String run, Spot from, Spot to, Distance length, List<Occupant> wires,
        Optional<BundleSize> size) {

    public Section {
        wires = List.copyOf(wires);
    }

    /**
     * A wire in a section.
     *
     * @param wire     the wire
     * @param size     its conductor, the largest that it has in the vehicles asked for; empty when no size is stated
     * @param diameter its thickness, the greatest that it has in these vehicles; empty when no size is stated
     * @param when     the vehicles in which it runs here
     */
    public record Occupant(WireView wire, Optional<ConductorSize> size, Optional<OutsideDiameter> diameter,
            Condition when) {
    }

    /** {@code leftWing - S4}. */
    public String label() {
        return from.label() + " - " + to.label();
    }

    /** The wires without a size, which {@link #size} leaves out. */
    public List<WireView> unsized() {
        return wires.stream().filter(each -> each.diameter().isEmpty()).map(Occupant::wire).toList();
    }

    /** True when one of the thicknesses is estimated. */
    public boolean isEstimated() {
        return wires.stream().anyMatch(each -> each.diameter().map(OutsideDiameter::estimated).orElse(false));
    }

    /**
     * Mass of all conductors in the section in g; empty when its length is unknown. Wires without a size are left out.
     */
    public Optional<Double> copperGrams(Copper copper) {
        return length.length().map(each -> grams(copper, each));
    }

    private double grams(Copper copper, Length of) {
        return wires.stream().flatMap(each -> each.size().stream()).mapToDouble(each -> copper.grams(each, of)).sum();
    }
}
