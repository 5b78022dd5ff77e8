// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

/**
 * How much wider than its bundle a conduit or loose tube is on the inside, so that wires can be drawn in and moved.
 *
 * @param share what the inside diameter has beyond the bundle's, as a share of that; 0 or more
 * @param basis where the figure comes from, for people
 */
public record ConduitRoom(double share, String basis) {

    /** About 25 % larger than the greatest diameter of the bundle. */
    public static final ConduitRoom AIRCRAFT_PRACTICE = new ConduitRoom(0.25, "FAA AC 43.13-1B, 11-249");

    /**
     * @throws IllegalArgumentException if the share is negative or no number
     */
    public ConduitRoom {
        if (!(share >= 0) || Double.isInfinite(share)) {
            throw new IllegalArgumentException("a conduit is no narrower than its bundle");
        }
    }

    /** Least inside diameter in mm for a bundle of a diameter in mm, its cover included. */
    public double leastInsideMm(double bundleMm) {
        return (1 + share) * bundleMm;
    }

    /** The thickest bundle in mm for a conduit of an inside diameter in mm. */
    public double thickestBundleMm(double insideMm) {
        return insideMm / (1 + share);
    }
}
