// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import org.loomwright.electric.connection.Point;

/** Where pieces of a network meet; a value that can serve as a key. */
public sealed interface Junction {

    /** A point that the sources name: a cavity, a pin, a splice, a stud, a ground node. */
    record At(Point point) implements Junction {
        @Override
        public String toString() {
            return point.toString();
        }
    }

    /**
     * The conductor in the terminal at one end of a wire, ahead of the contact that the terminal makes.
     *
     * @param owner name of the drawing or harness
     * @param wire  label of the wire
     * @param start true at its start
     */
    record Tip(String owner, String wire, boolean start) implements Junction {
        @Override
        public String toString() {
            return "end of " + wire;
        }
    }

    /** Returns the junction at a point. */
    static Junction at(Point point) {
        return new At(point);
    }
}
