// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import org.loomwright.harness.link.Node;

/** A point of the network; a value that can serve as a key. */
public sealed interface Point {

    /** A spot where wires end. */
    record Spot(Node node) implements Point {
        /** Written out for the same reason as that of {@link Node}. */
        @Override
        public int hashCode() {
            return node.hashCode();
        }

        @Override
        public boolean equals(Object other) {
            return this == other || other instanceof Spot that && node.equals(that.node);
        }

        @Override
        public String toString() {
            return node.label();
        }
    }

    /** A ground node of a platform. */
    record Ground(String platform, String name) implements Point {
        @Override
        public String toString() {
            return "ground " + name;
        }
    }
}
