// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NewtonSolverTest {

    private static final double NEAR = 1e-9;

    private static Outcome.Solution solve(Netlist netlist) {
        return assertInstanceOf(Outcome.Solution.class, new NewtonSolver().solve(netlist));
    }

    @Test
    void namesNodesThatNothingHolds() {
        Netlist netlist = Netlist.builder().hold(0, 0).resistor(1, 0, 1).resistor(2, 3, 1)
                .add(3, 4, new Element.Draw(1)).build();
        assertEquals(new Outcome.Floating(List.of(2, 3, 4)), new NewtonSolver().solve(netlist));
    }

    @Test
    void aResistanceOfNothingIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Element.Resistor(0));
        assertThrows(IllegalArgumentException.class, () -> new Element.Cell(12, 0));
        assertThrows(IllegalArgumentException.class, () -> new Element.Resistor(Double.NaN));
    }

    /** A potential of 12 V has too few digits to tell the current of a conductor of a microohm or less. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-3, 1e-5, 1e-6, 1e-7})
    void shortThickConductorsCarryWhatFlowsThroughThem(double ohms) {
        Netlist.Builder builder = Netlist.builder().hold(0, 0).add(1, 0, new Element.Battery(12.6, 0.01, 0.6));
        for (int i = 0; i < 8; i++) {
            builder.resistor(1 + i, 2 + i, ohms * (1 + i));
        }
        builder.add(9, 10, new Element.Filament(12.8, 4)).resistor(10, 11, ohms).resistor(11, 0, 3 * ohms)
                .resistor(5, 11, 1.5);
        Outcome.Solution solution = solve(builder.build());
        assertEquals(0, solution.residual(), 1e-11);
        assertEquals(-solution.currents()[0], solution.currents()[1], 1e-11);
        assertEquals(solution.currents()[5], new Element.Filament(12.8, 4).current(solution.across(9, 10)), 1e-11);
        assertEquals(solution.across(5, 11) / 1.5, solution.currents()[12], 1e-11);
    }

    @Test
    void aLoadThatTheFeedCannotSupplyDropsOut() {
        Outcome.Solution solution = solve(Netlist.builder().hold(0, 0).hold(1, 12).resistor(1, 2, 2)
                .add(2, 0, new Element.Electronic(100, 8, false)).build());
        assertTrue(solution.potentials()[2] < 8);
        assertEquals(0, solution.residual(), NewtonSolver.GOOD);
    }

    /** 10 W behind 1 ohm at 12 V: v² - 12 v + 10 = 0, so v = 6 + sqrt(26). */
    @Test
    void aLoadOfConstantPowerTakesMoreCurrentAtLessVoltage() {
        Outcome.Solution solution = solve(Netlist.builder().hold(0, 0).hold(1, 12).resistor(1, 2, 1)
                .add(2, 0, new Element.Electronic(10, 5, false)).build());
        assertEquals(6 + Math.sqrt(26), solution.potentials()[2], NEAR);
    }

    /** It gives nothing, and must not keep the lamps of the battery from being solved. */
    @Test
    void anAlternatorThatNothingIsConnectedToIsSolved() {
        Outcome.Solution solution = solve(Netlist.builder().hold(0, 0).add(1, 0, new Element.Battery(12.6, 0.01, 0.6))
                .resistor(1, 2, 0.05).add(2, 0, new Element.Filament(12.8, 4)).add(2, 0, new Element.Filament(12.8, 1))
                .add(3, 0, new Element.Regulated(14, 35, 0.004)).resistor(3, 4, 1).build());
        assertEquals(14, solution.potentials()[3], NEAR);
        assertEquals(14, solution.potentials()[4], NEAR);
        assertTrue(solution.potentials()[2] > 12);
    }

    @Test
    void anAlternatorHoldsItsVoltageUpToItsOutputAndTakesNothingBack() {
        Netlist.Builder light = Netlist.builder().hold(0, 0).add(1, 0, new Element.Regulated(14, 30, 0.01))
                .resistor(1, 0, 1);
        assertEquals(14 / 1.01, solve(light.build()).potentials()[1], NEAR);
        Netlist.Builder heavy = Netlist.builder().hold(0, 0).add(1, 0, new Element.Regulated(14, 30, 0.01))
                .resistor(1, 0, 0.1);
        assertEquals(3, solve(heavy.build()).potentials()[1], NEAR);
        Netlist.Builder charged = Netlist.builder().hold(0, 0).hold(2, 15).resistor(2, 1, 0.1)
                .add(1, 0, new Element.Regulated(14, 30, 0.01));
        assertEquals(15, solve(charged.build()).potentials()[1], NEAR);
    }

    @Test
    void aDiodeConductsOneWay() {
        Element diode = new Element.OneWay(0.7, 1);
        assertEquals((12 - 0.7) / 2, solve(Netlist.builder().hold(0, 0).hold(1, 12).resistor(1, 2, 1)
                .add(2, 0, diode).build()).currents()[0], NEAR);
        assertEquals(0, solve(Netlist.builder().hold(0, 0).hold(1, 12).resistor(1, 2, 1)
                .add(0, 2, diode).build()).currents()[0], 1e-6);
    }

    /**
     * Exponents of lamp re-rating, Fink and Beaty, Standard Handbook for Electrical Engineers, 11th ed., p. 22-8, at
     * the legal floor of 85 % of the design voltage (Cal. Code Regs. title 13, s. 1249(c)): current 0.9145.
     */
    @Tag("outside")
    @ParameterizedTest
    @CsvSource({"0.85, 0.9145", "0.90, 0.9437", "0.9375, 0.9652", "1.09375, 1.0505"})
    void aFilamentsCurrentFollowsTheHandbook(double share, double current) {
        assertEquals(current, new Element.Filament(12.8, 1).current(12.8 * share), 1e-4);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void slopesAreTheDerivativesOfCurrents(long seed) {
        Random random = new Random(seed);
        List<Element> elements = List.of(new Element.Resistor(2), new Element.Cell(12, 0.1),
                new Element.Regulated(14, 20, 0.1), new Element.Filament(12.8, 4),
                new Element.Electronic(20, 8, false), new Element.Electronic(2, 8, true), new Element.OneWay(0.7, 3));
        for (Element element : elements) {
            for (int i = 0; i < 50; i++) {
                double volts = random.nextDouble() * 30 - 12;
                double step = 1e-6;
                double wanted = (element.current(volts + step) - element.current(volts - step)) / (2 * step);
                assertEquals(wanted, element.slope(volts), 1e-4 * Math.max(1, Math.abs(wanted)), element + " " + volts);
                double[] both = new double[2];
                element.evaluate(volts, both, both, 1);
                assertEquals(element.slope(volts), both[1], 0);
                double[] current = new double[1];
                element.evaluate(volts, current, new double[1], 0);
                assertEquals(element.current(volts), current[0], 0);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15})
    void linearNetworksObeySuperposition(long seed) {
        Random random = new Random(seed);
        List<int[]> ends = new ArrayList<>();
        List<Double> ohms = new ArrayList<>();
        for (int node = 2; node < 30; node++) {
            for (int i = 0; i < 2; i++) {
                ends.add(new int[] {node, random.nextInt(node)});
                ohms.add(0.01 + random.nextDouble());
            }
        }
        double[] both = linear(ends, ohms, 12, 0.5);
        double[] one = linear(ends, ohms, 12, 0);
        double[] other = linear(ends, ohms, 0, 0.5);
        for (int node = 0; node < both.length; node++) {
            assertEquals(both[node], one[node] + other[node], NEAR);
        }
    }

    private static double[] linear(List<int[]> ends, List<Double> ohms, double volts, double amps) {
        Netlist.Builder builder = Netlist.builder().hold(0, 0).hold(1, volts).add(0, 17, new Element.Draw(amps));
        for (int i = 0; i < ends.size(); i++) {
            builder.resistor(ends.get(i)[0], ends.get(i)[1], ohms.get(i));
        }
        return solve(builder.build()).potentials();
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24, 25, 26})
    void namesAndOrderOfNodesAndElementsDoNotMatter(long seed) {
        Netlist netlist = AgainstSpiceTest.RandomNetworks.of(seed);
        Random random = new Random(seed);
        List<Integer> names = new ArrayList<>();
        for (int i = 0; i < netlist.nodes(); i++) {
            names.add(i);
        }
        Collections.shuffle(names, random);
        List<Netlist.Branch> branches = new ArrayList<>(netlist.branches());
        Collections.shuffle(branches, random);
        Netlist.Builder other = Netlist.builder();
        branches.forEach(each -> other.add(names.get(each.from()), names.get(each.to()), each.element()));
        for (int i = 0; i < netlist.nodes(); i++) {
            if (netlist.isHeld(i)) {
                other.hold(names.get(i), netlist.held().get(i));
            }
        }
        double[] wanted = solve(netlist).potentials();
        double[] found = solve(other.build()).potentials();
        for (int i = 0; i < wanted.length; i++) {
            assertEquals(wanted[i], found[names.get(i)], NEAR);
        }
    }

    @Test
    void theDropGrowsWithLengthAndTemperature() {
        double before = 0;
        for (double ohms = 0.01; ohms < 1; ohms *= 1.5) {
            Outcome.Solution solution = solve(Netlist.builder().hold(0, 0).hold(1, 13).resistor(1, 2, ohms)
                    .add(2, 0, new Element.Filament(12.8, 4)).build());
            assertTrue(solution.across(1, 2) > before);
            before = solution.across(1, 2);
        }
    }

    /** What is kept of a network is the order of elimination, which is the same for other figures. */
    @Test
    void whatWasSolvedBeforeChangesNoDigit() {
        NewtonSolver kept = new NewtonSolver();
        for (long seed : new long[] {3, 3, 4, 3}) {
            for (double more : new double[] {1, 1.3, 2}) {
                Netlist netlist = AgainstSpiceTest.RandomNetworks.of(seed);
                Netlist other = new Netlist(netlist.nodes(), netlist.branches().stream().map(each ->
                        each.element() instanceof Element.Resistor resistor ? new Netlist.Branch(each.from(), each.to(),
                                new Element.Resistor(more * resistor.ohms())) : each).toList(), netlist.held());
                Outcome.Solution found = assertInstanceOf(Outcome.Solution.class, kept.solve(other));
                assertArrayEquals(solve(other).potentials(), found.potentials(), 0);
                assertArrayEquals(solve(other).currents(), found.currents(), 0);
            }
        }
    }
}
