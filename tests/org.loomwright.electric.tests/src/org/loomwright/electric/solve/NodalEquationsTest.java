// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Nodes are taken away and brought back without changing what the equations say; work grows with the network only. */
class NodalEquationsTest {

    private static NodalEquations equations(Netlist netlist) {
        return new NodalEquations(netlist, shape -> new EliminationPlan(shape, new EliminationOrder(shape)));
    }

    /** Against the dense L times U with pivots of EJML, for all nodes at once. */
    @Tag("outside")
    @ParameterizedTest
    @ValueSource(longs = {31, 32, 33, 34, 35, 36, 37, 38})
    void aStepSolvesWhatTheWholeMatrixSays(long seed) {
        Random random = new Random(seed);
        int indefinite = 0;
        for (int i = 0; i < 20; i++) {
            Netlist netlist = AgainstSpiceTest.RandomNetworks.of(100 * seed + i);
            NodalEquations equations = equations(netlist);
            double[] slopes = new double[equations.count()];
            double[] backs = new double[equations.count()];
            for (int k = 0; k < slopes.length; k++) {
                slopes[k] = i % 2 == 0 ? 2 * random.nextDouble() : 2 - 40 * random.nextDouble();
                backs[k] = random.nextDouble();
            }
            double[] at = equations.potentials();
            assertTrue(equations.isSound() && equations.step(slopes, backs, at));
            double[] amps = new double[slopes.length];
            double[] volts = new double[slopes.length];
            equations.evaluate(at, volts, new double[slopes.length], new double[slopes.length]);
            for (int k = 0; k < amps.length; k++) {
                amps[k] = slopes[k] * volts[k] - backs[k];
            }
            Outcome.Solution solution = assertInstanceOf(Outcome.Solution.class,
                    equations.outcome(at, amps, slopes, 1));
            Whole whole = new Whole(netlist, slopes, backs);
            indefinite += whole.negative ? 1 : 0;
            for (int node = 0; node < netlist.nodes(); node++) {
                double wanted = whole.potentials.get(node, 0);
                assertEquals(wanted, solution.potentials()[node], 1e-8 * Math.max(1, Math.abs(wanted)),
                        "network " + i + " node " + node);
            }
        }
        assertTrue(indefinite > 0, "no matrix that needs pivots");
    }

    /** All nodal equations of a network as one dense matrix, those of held nodes among them. */
    private static final class Whole {
        private final DMatrixRMaj potentials;
        private final boolean negative;

        Whole(Netlist netlist, double[] slopes, double[] backs) {
            int nodes = netlist.nodes();
            DMatrixRMaj matrix = new DMatrixRMaj(nodes, nodes);
            DMatrixRMaj right = new DMatrixRMaj(nodes, 1);
            int next = 0;
            for (Netlist.Branch branch : netlist.branches()) {
                double slope;
                double back = 0;
                switch (branch.element()) {
                    case Element.Resistor resistor -> slope = 1 / resistor.ohms();
                    case Element.Cell cell -> {
                        slope = 1 / cell.ohms();
                        back = cell.volts() / cell.ohms();
                    }
                    default -> {
                        slope = slopes[next];
                        back = backs[next++];
                    }
                }
                matrix.add(branch.from(), branch.from(), slope);
                matrix.add(branch.to(), branch.to(), slope);
                matrix.add(branch.from(), branch.to(), -slope);
                matrix.add(branch.to(), branch.from(), -slope);
                right.add(branch.from(), 0, back);
                right.add(branch.to(), 0, -back);
            }
            boolean below = false;
            for (int node = 0; node < nodes; node++) {
                if (netlist.isHeld(node)) {
                    for (int other = 0; other < nodes; other++) {
                        matrix.set(node, other, node == other ? 1 : 0);
                    }
                    right.set(node, 0, netlist.held().get(node));
                }
                below |= matrix.get(node, node) < 0;
            }
            negative = below;
            potentials = new DMatrixRMaj(nodes, 1);
            assertTrue(CommonOps_DDRM.solve(matrix, right, potentials));
        }
    }

    /** Ten times the lamps take ten times the work of each step, and hardly more steps. */
    @Test
    void workGrowsWithTheNetworkAndStepsDoNot() {
        Work few = new Work(30);
        Work many = new Work(300);
        assertTrue(many.steps <= few.steps + 2, few.steps + " steps become " + many.steps);
        assertTrue(many.operations <= 11 * few.operations, few.operations + " become " + many.operations);
        assertTrue(many.values <= 11 * few.values, few.values + " values become " + many.values);
        assertTrue(many.evaluations <= 14 * few.evaluations, few.evaluations + " become " + many.evaluations);
    }

    /** Each lamp brings ten nodes, of which those at its terminals are left for the search. */
    @Test
    void aSearchIsLeftWithTheTerminalsOfLoads() {
        assertEquals(2 * 30 + 1, new Work(30).left);
    }

    /** Lamps behind contacts, wires and a fuse, their returns joined at grounds of three. */
    private static final class Work {
        private final int left;
        private final int operations;
        private final int values;
        private final int steps;
        private final int evaluations;

        Work(int lamps) {
            Netlist.Builder builder = Netlist.builder().hold(0, 0).add(1, 0, new Element.Battery(12.6, 0.01, 0.6));
            int nodes = 2;
            int ground = 0;
            for (int i = 0; i < lamps; i++) {
                int at = 1;
                for (int k = 0; k < 5; k++) {
                    builder.resistor(at, nodes, 0.003 + 0.001 * ((i + k) % 7));
                    at = nodes++;
                }
                builder.add(at, nodes, new Element.Filament(12.8, 30.0 / lamps));
                at = nodes++;
                for (int k = 0; k < 3; k++) {
                    builder.resistor(at, nodes, 0.002 + 0.001 * ((i + k) % 5));
                    at = nodes++;
                }
                if (i % 3 == 0) {
                    ground = nodes++;
                    builder.resistor(ground, 0, 0.004);
                }
                builder.resistor(at, ground, 0.001);
            }
            NodalEquations equations = equations(builder.build());
            left = equations.end() - equations.start();
            operations = equations.plan().operations();
            values = equations.plan().size();
            NewtonSearch search = new NewtonSearch(equations);
            steps = assertInstanceOf(Outcome.Solution.class, search.run()).steps();
            evaluations = search.evaluations();
        }
    }
}
