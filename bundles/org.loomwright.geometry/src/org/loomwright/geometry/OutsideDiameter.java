// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.Optional;
import org.loomwright.harness.Part;
import org.loomwright.quantity.ConductorSize;

/**
 * The diameter of a wire over its insulation.
 *
 * @param mm        in mm
 * @param estimated true when the catalogue has no row for the size, or one from memory
 * @param basis     where the figure comes from, for people
 */
public record OutsideDiameter(double mm, boolean estimated, String basis) {

    private static final double STRANDING = 1.15;
    private static final double LEAST_WALL_MM = 0.58;
    private static final double MOST_WALL_MM = 2.0;
    private static final double WALL_SHARE = 0.2;

    /** The diameter that the cable's row for the size states; an estimate when it states none. */
    public static OutsideDiameter of(Optional<Part> cable, ConductorSize size) {
        return cable.flatMap(part -> part.sizes().stream().filter(row -> row.size().equals(size))
                .filter(row -> row.diameter().map(each -> Distance.usable(each).isPresent()
                        && each.signum() > 0).orElse(false))
                .findFirst()
                .map(row -> new OutsideDiameter(Distance.usable(row.diameter().get()).get().toMillimetres(),
                        Part.fromMemory(row.basis()),
                        row.basis().isEmpty() ? "catalogue, " + part.name() + " " + size : row.basis())))
                .orElseGet(() -> estimate(size));
    }

    /**
     * Common practice: a stranded conductor is 15 % thicker than a solid one of its section; the wall is 0.58 mm (0.023
     * in, that of general-purpose wire 20 to 14 gauge), a fifth of the conductor's diameter for thicker ones, 2 mm at
     * most.
     */
    private static OutsideDiameter estimate(ConductorSize size) {
        double conductor = STRANDING * size.diameterMm();
        double wall = Math.min(MOST_WALL_MM, Math.max(LEAST_WALL_MM, WALL_SHARE * conductor));
        return new OutsideDiameter(conductor + 2 * wall, true, "estimate, common practice");
    }
}
