// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Holds the solver against a general-purpose one, which shares neither code nor method with it. */
@Tag("outside")
class AgainstSpiceTest {

    private static final int NETWORKS = 200;
    private static final double RELATIVE = 1e-6;

    @BeforeEach
    void needsTheProgram() {
        assumeTrue(Spice.isThere(), "ngspice is not installed");
    }

    @Test
    void twoHundredRandomNetworksHaveTheSamePotentials(@TempDir Path folder) throws IOException, InterruptedException {
        List<Netlist> netlists = new ArrayList<>();
        for (int seed = 0; seed < NETWORKS; seed++) {
            netlists.add(RandomNetworks.of(seed));
        }
        List<Outcome.Solution> ours = new ArrayList<>();
        List<Netlist> sides = new ArrayList<>();
        for (Netlist netlist : netlists) {
            ours.add(assertInstanceOf(Outcome.Solution.class, new NewtonSolver().solve(netlist)));
            assertTrue(ours.getLast().residual() < NewtonSolver.GOOD, "network " + ours.size());
            sides.add(Spice.onOneSide(netlist, ours.getLast().potentials()));
        }
        List<double[]> theirs = Spice.potentials(sides, List.of(), folder);
        int loads = 0;
        for (int i = 0; i < NETWORKS; i++) {
            assertTrue(Spice.sameSides(netlists.get(i), theirs.get(i), ours.get(i).potentials()), "network " + i);
            for (int node = 0; node < netlists.get(i).nodes(); node++) {
                double wanted = theirs.get(i)[node];
                assertEquals(wanted, ours.get(i).potentials()[node], RELATIVE * Math.max(1e-3, Math.abs(wanted)),
                        "network " + i + " node " + node);
            }
            loads += (int) netlists.get(i).branches().stream()
                    .filter(each -> each.element() instanceof Element.Filament
                            || each.element() instanceof Element.Electronic).count();
        }
        assertTrue(loads > 5 * NETWORKS, "hardly any load: " + loads);
    }

    /** Wiring-like networks: a battery, feeds that branch out, lamps and other loads, shared grounds, cross joints. */
    static final class RandomNetworks {

        private RandomNetworks() {
        }

        static Netlist of(long seed) {
            Random random = new Random(seed * 7919 + 17);
            Netlist.Builder builder = Netlist.builder().hold(0, 0);
            double ohms = between(random, 0.004, 0.03);
            builder.add(1, 0, random.nextBoolean() ? new Element.Cell(12.6, ohms)
                    : new Element.Battery(12.6, ohms, between(random, 0.05, 0.5)));
            if (random.nextBoolean()) {
                builder.add(2, 0, new Element.Regulated(14.2, between(random, 20, 60), 0.01));
                builder.resistor(2, 1, between(random, 0.001, 0.01));
            } else {
                builder.resistor(2, 1, between(random, 0.001, 0.01));
            }
            int nodes = 3;
            List<Integer> feeds = new ArrayList<>(List.of(1, 2));
            List<Integer> grounds = new ArrayList<>(List.of(0));
            int wires = 10 + random.nextInt(60);
            for (int i = 0; i < wires; i++) {
                List<Integer> side = random.nextInt(3) == 0 ? grounds : feeds;
                builder.resistor(side.get(random.nextInt(side.size())), nodes, between(random, 0.001, 0.05));
                side.add(nodes++);
            }
            for (int i = 0; i < wires / 8; i++) {
                List<Integer> side = random.nextInt(3) == 0 ? grounds : feeds;
                int from = side.get(random.nextInt(side.size()));
                int to = side.get(random.nextInt(side.size()));
                if (from != to) {
                    builder.resistor(from, to, between(random, 0.001, 0.5));
                }
            }
            int loads = 6 + random.nextInt(20);
            for (int i = 0; i < loads; i++) {
                builder.add(feeds.get(random.nextInt(feeds.size())), grounds.get(random.nextInt(grounds.size())),
                        load(random));
            }
            return builder.build();
        }

        private static Element load(Random random) {
            return switch (random.nextInt(8)) {
                case 0 -> new Element.Resistor(between(random, 1, 200));
                case 1 -> new Element.Electronic(between(random, 2, 30), 8, false);
                case 2 -> new Element.Electronic(between(random, 0.1, 3), 6, true);
                case 3 -> new Element.OneWay(0.7, between(random, 5, 100));
                default -> new Element.Filament(random.nextBoolean() ? 12.8 : 13.5, between(random, 0.15, 5));
            };
        }

        private static double between(Random random, double least, double most) {
            return least * Math.pow(most / least, random.nextDouble());
        }
    }
}
