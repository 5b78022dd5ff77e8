// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import org.loomwright.harness.link.Node;

/** A point of the network; a value that can serve as a key. */
public sealed interface Point {

    /** A spot where wires end. Its hash is kept, since graphs ask for it all the time. */
    final class Spot implements Point {
        private final Node node;
        private final int hash;

        /** Takes what is there. */
        public Spot(Node node) {
            this.node = node;
            this.hash = node.hashCode();
        }

        /** Returns what is there. */
        public Node node() {
            return node;
        }

        @Override
        public int hashCode() {
            return hash;
        }

        @Override
        public boolean equals(Object other) {
            return this == other || other instanceof Spot that && hash == that.hash && node.equals(that.node);
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
