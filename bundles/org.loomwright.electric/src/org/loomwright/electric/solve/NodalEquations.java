// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.util.List;

/**
 * The nodal equations of one network in flat arrays. Conductors are put in once, and nodes that only they meet at are
 * taken away; the other elements enter as lines anew at each step. Potentials are by place of an
 * {@link EliminationPlan}. For one search.
 */
final class NodalEquations {

    private final Netlist netlist;
    private final EliminationPlan plan;
    private final int[] from;
    private final int[] to;
    /** By branch: of a conductor the conductance in A/V. */
    private final double[] conductance;
    /** Branches that are no conductors, and their elements. */
    private final int[] curved;
    private final Element[] elements;
    private final int count;

    private final double[] values;
    private final double[] ground;
    private final double[] injected;
    private final double[] inverse;
    private final double[] stepValues;
    private final double[] stepGround;
    private final double[] stepInjected;
    private final double[] potentials;
    private boolean sound = true;

    NodalEquations(Netlist netlist) {
        this.netlist = netlist;
        List<Netlist.Branch> branches = netlist.branches();
        int size = branches.size();
        int nodes = netlist.nodes();
        from = new int[size];
        to = new int[size];
        byte[] kinds = new byte[size];
        conductance = new double[size];
        double[] source = new double[size];
        int[] which = new int[size];
        Element[] those = new Element[size];
        int found = 0;
        for (int i = 0; i < size; i++) {
            Netlist.Branch branch = branches.get(i);
            from[i] = branch.from();
            to[i] = branch.to();
            Element element = branch.element();
            if (element instanceof Element.Resistor resistor) {
                conductance[i] = 1 / resistor.ohms();
            } else if (element instanceof Element.Cell cell) {
                conductance[i] = 1 / cell.ohms();
                source[i] = cell.volts() / cell.ohms();
            } else if (element instanceof Element.Draw draw) {
                kinds[i] = EliminationPlan.DRAWN;
                source[i] = -draw.amps();
            } else {
                kinds[i] = EliminationPlan.CURVED;
                which[found] = i;
                those[found++] = element;
            }
        }
        boolean[] held = new boolean[nodes];
        List<Double> volts = netlist.held();
        for (int i = 0; i < nodes; i++) {
            held[i] = !Double.isNaN(volts.get(i));
        }
        curved = which;
        elements = those;
        count = found;
        plan = new EliminationPlan(from, to, kinds, held);
        potentials = new double[nodes];
        for (int i = 0; i < nodes; i++) {
            if (held[i]) {
                potentials[plan.place(i)] = volts.get(i);
            }
        }
        int edges = plan.edges();
        int free = plan.free();
        values = new double[edges];
        ground = new double[nodes];
        injected = new double[nodes];
        inverse = new double[free];
        stepValues = new double[edges];
        stepGround = new double[nodes];
        stepInjected = new double[nodes];
        if (plan.isTied()) {
            for (int i = 0; i < size; i++) {
                if (kinds[i] != EliminationPlan.CURVED) {
                    put(i, conductance[i], source[i], values, ground, injected);
                }
            }
            sound = plan.eliminate(0, plan.once(), values, ground, injected, inverse);
        }
    }

    /** Adds a line: a current of so much A/V times the voltage, less a current in A. */
    private void put(int branch, double slope, double back, double[] into, double[] toGround, double[] currents) {
        int a = plan.place(from[branch]);
        int b = plan.place(to[branch]);
        int free = plan.free();
        currents[a] += back;
        currents[b] -= back;
        int edge = plan.edgeOf(branch);
        if (edge >= 0) {
            into[edge] += slope;
        } else if (a >= free && b < free) {
            toGround[b] += slope;
            currents[b] += slope * potentials[a];
        } else if (b >= free && a < free) {
            toGround[a] += slope;
            currents[a] += slope * potentials[b];
        }
    }

    /** Whether every node is joined to one that is held. */
    boolean isTied() {
        return plan.isTied();
    }

    /** Whether what only conductors meet at could be taken away. */
    boolean isSound() {
        return sound;
    }

    /** The first place that a step finds. */
    int start() {
        return plan.once();
    }

    /** One after the last place that a step finds. */
    int end() {
        return plan.free();
    }

    /** Returns how many elements are no conductors. */
    int count() {
        return count;
    }

    Element element(int which) {
        return elements[which];
    }

    /** The voltage in V across one of them. */
    double across(int which, double[] at) {
        return at[plan.place(from[curved[which]])] - at[plan.place(to[curved[which]])];
    }

    /** Adds a current in A through one of them to the sums at its ends. */
    void spread(int which, double current, double[] sums) {
        sums[plan.place(from[curved[which]])] += current;
        sums[plan.place(to[curved[which]])] -= current;
    }

    /** Returns potentials in V by place, with those that are held. */
    double[] potentials() {
        return potentials.clone();
    }

    /**
     * Solves with lines for those that are no conductors.
     *
     * @param slopes of the lines, in A/V
     * @param backs  what to take off their currents, in A
     * @param into   takes potentials in V from {@link #start} on
     * @return false if there is no single solution
     */
    boolean step(double[] slopes, double[] backs, double[] into) {
        load(slopes, backs);
        int free = plan.free();
        if (plan.eliminate(plan.once(), free, stepValues, stepGround, stepInjected, inverse)) {
            plan.substitute(plan.once(), free, stepValues, stepInjected, inverse, into);
        } else {
            load(slopes, backs);
            if (!PivotedStep.solve(plan, plan.once(), stepValues, stepGround, stepInjected, into)) {
                return false;
            }
        }
        for (int i = plan.once(); i < free; i++) {
            if (!Double.isFinite(into[i])) {
                return false;
            }
        }
        return true;
    }

    private void load(double[] slopes, double[] backs) {
        System.arraycopy(values, 0, stepValues, 0, values.length);
        System.arraycopy(ground, 0, stepGround, 0, ground.length);
        System.arraycopy(injected, 0, stepInjected, 0, injected.length);
        for (int i = 0; i < count; i++) {
            put(curved[i], slopes[i], backs[i], stepValues, stepGround, stepInjected);
        }
    }

    /**
     * Brings back all nodes, and finds every current and what is left over at each node.
     *
     * @param at    potentials by place
     * @param known currents in A of those that are no conductors
     */
    Outcome outcome(double[] at, double[] known, int steps) {
        plan.substitute(0, plan.once(), values, injected, inverse, at);
        double[] sums = new double[at.length];
        double[] currents = new double[from.length];
        for (int i = 0; i < count; i++) {
            currents[curved[i]] = known[i];
        }
        int next = 0;
        for (int i = 0; i < from.length; i++) {
            int a = plan.place(from[i]);
            int b = plan.place(to[i]);
            double current;
            if (next < count && curved[next] == i) {
                current = known[next++];
            } else if (conductance[i] > 0) {
                Element element = netlist.branches().get(i).element();
                current = element instanceof Element.Resistor resistor ? (at[a] - at[b]) / resistor.ohms()
                        : element.current(at[a] - at[b]);
            } else {
                current = netlist.branches().get(i).element().current(at[a] - at[b]);
            }
            currents[i] = current;
            sums[a] += current;
            sums[b] -= current;
        }
        double[] byNode = new double[at.length];
        double worst = 0;
        int node = 0;
        for (int i = 0; i < byNode.length; i++) {
            int place = plan.place(i);
            byNode[i] = at[place];
            if (place < plan.free() && !(Math.abs(sums[place]) <= worst)) {
                worst = Math.abs(sums[place]);
                node = i;
            }
        }
        return worst < NewtonSolver.GOOD ? new Outcome.Solution(byNode, currents, worst, steps)
                : new Outcome.Unsolved(worst, node);
    }
}
