// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import org.loomwright.condition.Condition;

/**
 * A connection between two points. It has no direction. What depends on the state of a switch or relay is there when
 * some state closes it.
 *
 * @param index      its place in {@link Connections#edges}
 * @param a          one point
 * @param b          the other
 * @param when       the vehicles in which it is there
 * @param protection what protects behind it
 * @param link       what makes it
 */
public record Edge(int index, Point a, Point b, Condition when, Protection protection, Link link) {

    /** Returns the point at its other end. */
    public Point other(Point point) {
        return a.equals(point) ? b : a;
    }

    /** Returns whether it is a wire. */
    public boolean isWire() {
        return link instanceof Link.OfWire;
    }

    /** Returns whether it leads into a ground node. */
    public boolean isGround() {
        return link instanceof Link.Bolted || link instanceof Link.Strapped;
    }
}
