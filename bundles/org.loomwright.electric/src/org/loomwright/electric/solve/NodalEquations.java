// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.util.List;
import java.util.function.Function;

/**
 * The nodal equations of one network in flat arrays. Conductors are put in once, and nodes that only they meet at are
 * taken away; the other elements enter as lines anew at each step. Potentials are by place of an
 * {@link EliminationPlan}. For one search.
 */
final class NodalEquations {

    private final EliminationPlan plan;
    private final int start;
    private final int end;
    /** By branch: places of its ends; of a conductor its conductance in A/V and the voltage in V of a source in it. */
    private final int[] from;
    private final int[] to;
    private final double[] conductance;
    private final double[] source;

    /** Branches that are no conductors: elements, ends, and which value a conductance is a part of. */
    private final int count;
    private final int[] curved;
    private final Element[] elements;
    private final int[] first;
    private final int[] second;
    private final int[] slots;

    private final double[] values;
    private final double[] injected;
    private final double[] inverse;
    private final double[] stepValues;
    private final double[] stepInjected;
    /** By place: potentials in V that are held, and 0. */
    private final double[] fixed;
    private final boolean sound;
    private boolean factored;

    /** Puts in the conductors of a network; the function gives a plan for its shape. */
    NodalEquations(Netlist netlist, Function<EliminationPlan.Shape, EliminationPlan> plans) {
        List<Netlist.Branch> branches = netlist.branches();
        int size = branches.size();
        int nodes = netlist.nodes();
        int[] ends = new int[size];
        int[] others = new int[size];
        byte[] kinds = new byte[size];
        conductance = new double[size];
        source = new double[size];
        curved = new int[size];
        elements = new Element[size];
        int found = 0;
        for (int i = 0; i < size; i++) {
            Netlist.Branch branch = branches.get(i);
            ends[i] = branch.from();
            others[i] = branch.to();
            Element element = branch.element();
            if (element instanceof Element.Resistor resistor) {
                conductance[i] = 1 / resistor.ohms();
            } else if (element instanceof Element.Cell cell) {
                conductance[i] = 1 / cell.ohms();
                source[i] = cell.volts();
            } else {
                kinds[i] = element instanceof Element.Draw ? EliminationPlan.DRAWN : EliminationPlan.CURVED;
                curved[found] = i;
                elements[found++] = element;
            }
        }
        count = found;
        boolean[] held = new boolean[nodes];
        double[] volts = new double[nodes];
        int node = 0;
        for (Double each : netlist.held()) {
            double potential = each;
            volts[node] = potential;
            held[node++] = potential == potential;
        }
        plan = plans.apply(new EliminationPlan.Shape(ends, others, kinds, held));
        start = plan.once();
        end = plan.free();
        int[] places = plan.places();
        fixed = new double[nodes];
        for (int i = 0; i < nodes; i++) {
            fixed[places[i]] = held[i] ? volts[i] : 0;
        }
        from = plan.first();
        to = plan.second();
        first = new int[count];
        second = new int[count];
        slots = new int[count];
        values = new double[plan.size()];
        stepValues = new double[plan.size()];
        injected = new double[nodes];
        stepInjected = new double[nodes];
        inverse = new double[nodes];
        if (!plan.isTied()) {
            sound = false;
            return;
        }
        int[] slot = plan.slots();
        for (int i = 0; i < size; i++) {
            int a = from[i];
            int b = to[i];
            double slope = conductance[i];
            double back = slope * source[i];
            values[slot[i]] += slope;
            injected[a] += slope * fixed[b] + back;
            injected[b] += slope * fixed[a] - back;
        }
        for (int i = 0; i < count; i++) {
            first[i] = from[curved[i]];
            second[i] = to[curved[i]];
            slots[i] = slot[curved[i]];
        }
        sound = plan.eliminate(0, start, values, injected, inverse);
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
        return start;
    }

    /** One after the last place that a step finds. */
    int end() {
        return end;
    }

    /** Returns the plan that these equations follow. */
    EliminationPlan plan() {
        return plan;
    }

    /** Returns how many elements are no conductors. */
    int count() {
        return count;
    }

    Element element(int which) {
        return elements[which];
    }

    /** Evaluates those that are no conductors at some potentials. */
    void evaluate(double[] at, double[] volts, double[] amps, double[] slopes) {
        for (int i = 0; i < count; i++) {
            volts[i] = at[first[i]] - at[second[i]];
            elements[i].evaluate(volts[i], amps, slopes, i);
        }
    }

    /** Adds currents in A through those that are no conductors to the sums at their ends. */
    void spread(double[] currents, double[] sums) {
        for (int i = 0; i < count; i++) {
            sums[first[i]] += currents[i];
            sums[second[i]] -= currents[i];
        }
    }

    /** Returns potentials in V by place, those that are held and 0. */
    double[] potentials() {
        return fixed.clone();
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
        factored = plan.eliminate(start, end, stepValues, stepInjected, inverse);
        if (factored) {
            plan.substitute(start, end, stepValues, stepInjected, inverse, into);
        } else {
            load(slopes, backs);
            if (!PivotedStep.solve(plan, start, stepValues, stepInjected, into)) {
                return false;
            }
        }
        double all = 0;
        for (int i = start; i < end; i++) {
            all += into[i];
        }
        return Double.isFinite(all);
    }

    private void load(double[] slopes, double[] backs) {
        System.arraycopy(values, 0, stepValues, 0, values.length);
        System.arraycopy(injected, 0, stepInjected, 0, injected.length);
        for (int i = 0; i < count; i++) {
            int a = first[i];
            int b = second[i];
            stepValues[slots[i]] += slopes[i];
            stepInjected[a] += slopes[i] * fixed[b] + backs[i];
            stepInjected[b] += slopes[i] * fixed[a] - backs[i];
        }
    }

    /**
     * Brings back all nodes, and finds every current and what is left over at each node.
     *
     * @param at     potentials by place
     * @param known  currents in A of those that are no conductors
     * @param slopes their derivatives in A/V
     */
    Outcome outcome(double[] at, double[] known, double[] slopes, int steps) {
        plan.substitute(0, start, values, injected, inverse, at);
        double[] currents = new double[from.length];
        for (int i = 0; i < from.length; i++) {
            currents[i] = (at[from[i]] - at[to[i]] - source[i]) * conductance[i];
        }
        for (int i = 0; i < count; i++) {
            currents[curved[i]] = known[i];
        }
        double[] sums = sums(currents);
        if (factored && !(Math.abs(sums[most(sums)]) < NewtonSearch.ENOUGH)) {
            refine(at, currents, sums, slopes);
            sums = sums(currents);
        }
        int most = most(sums);
        double worst = end == 0 ? 0 : Math.abs(sums[most]);
        int[] places = plan.places();
        double[] byNode = new double[at.length];
        for (int i = 0; i < byNode.length; i++) {
            byNode[i] = at[places[i]];
        }
        if (worst < NewtonSolver.GOOD) {
            return new Outcome.Solution(byNode, currents, worst, steps);
        }
        int node = 0;
        while (places[node] != most) {
            node++;
        }
        return new Outcome.Unsolved(worst, node);
    }

    /**
     * Takes away what rounding has left over: a potential of 12 V is known to 1e-15 V, which is too little to tell the
     * current of a conductor of a microohm. So the differences that are missing, which are as small as that, are found
     * from the sums, and currents take them in without adding them to potentials before.
     */
    private void refine(double[] at, double[] currents, double[] sums, double[] slopes) {
        double[] rest = new double[at.length];
        for (int i = 0; i < end; i++) {
            rest[i] = -sums[i];
        }
        plan.forward(0, start, values, rest, inverse);
        plan.forward(start, end, stepValues, rest, inverse);
        double[] more = new double[at.length];
        plan.substitute(start, end, stepValues, rest, inverse, more);
        plan.substitute(0, start, values, rest, inverse, more);
        for (int i = 0; i < from.length; i++) {
            currents[i] += (more[from[i]] - more[to[i]]) * conductance[i];
        }
        for (int i = 0; i < count; i++) {
            currents[curved[i]] += (more[first[i]] - more[second[i]]) * slopes[i];
        }
        for (int i = 0; i < end; i++) {
            at[i] += more[i];
        }
    }

    private double[] sums(double[] currents) {
        double[] sums = new double[fixed.length];
        for (int i = 0; i < currents.length; i++) {
            sums[from[i]] += currents[i];
            sums[to[i]] -= currents[i];
        }
        return sums;
    }

    /** The place that is not held at which most is left over. */
    private int most(double[] sums) {
        double worst = 0;
        int most = 0;
        for (int i = 0; i < end; i++) {
            double left = Math.abs(sums[i]);
            if (!(left <= worst)) {
                worst = left;
                most = i;
            }
        }
        return most;
    }
}
