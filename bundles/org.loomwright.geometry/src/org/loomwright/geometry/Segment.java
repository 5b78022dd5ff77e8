// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

/**
 * The stretch of a run between two neighbouring points.
 *
 * @param run    the trunk or branch
 * @param from   the point nearer to the start of the run
 * @param to     the next point
 * @param length its length; the tolerances are those of the dimensions that lie between the two points
 */
public record Segment(String run, Spot from, Spot to, Distance length) {

    /** {@code leftWing - radiator}. */
    public String label() {
        return from.label() + " - " + to.label();
    }
}
