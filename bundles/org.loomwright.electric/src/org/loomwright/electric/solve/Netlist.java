// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A network: nodes by number, elements between them, and nodes whose potential is held. Immutable.
 *
 * @param nodes    how many nodes there are
 * @param branches the elements; their order is that of the currents of a solution
 * @param held     for each node the potential in V at which it is held, or NaN
 */
public record Netlist(int nodes, List<Branch> branches, List<Double> held) {

    /** An element from one node to another. */
    public record Branch(int from, int to, Element element) {
    }

    public Netlist {
        branches = List.copyOf(branches);
        held = List.copyOf(held);
        if (held.size() != nodes) {
            throw new IllegalArgumentException("as many potentials as nodes are needed");
        }
        for (Branch branch : branches) {
            if (branch.from() < 0 || branch.to() < 0 || branch.from() >= nodes || branch.to() >= nodes) {
                throw new IllegalArgumentException("no such node: " + branch);
            }
        }
    }

    /** Returns a builder without a node. */
    public static Builder builder() {
        return new Builder();
    }

    /** Returns whether the potential of a node is held. */
    public boolean isHeld(int node) {
        return !Double.isNaN(held.get(node));
    }

    /** Collects a network. Nodes come about when they are first named. */
    public static final class Builder {
        private final List<Branch> branches = new ArrayList<>();
        private double[] held = new double[0];
        private int nodes;

        private Builder() {
        }

        /** Adds an element. */
        public Builder add(int from, int to, Element element) {
            reach(Math.max(from, to));
            branches.add(new Branch(from, to, element));
            return this;
        }

        /** Adds a resistor of so many ohm. */
        public Builder resistor(int from, int to, double ohms) {
            return add(from, to, new Element.Resistor(ohms));
        }

        /** Holds a node at a potential in V. */
        public Builder hold(int node, double volts) {
            reach(node);
            held[node] = volts;
            return this;
        }

        private void reach(int node) {
            if (node >= held.length) {
                int before = held.length;
                held = Arrays.copyOf(held, Math.max(16, 2 * node));
                Arrays.fill(held, before, held.length, Double.NaN);
            }
            nodes = Math.max(nodes, node + 1);
        }

        /** Returns the network. */
        public Netlist build() {
            return new Netlist(nodes, branches, Arrays.stream(held, 0, nodes).boxed().toList());
        }
    }
}
