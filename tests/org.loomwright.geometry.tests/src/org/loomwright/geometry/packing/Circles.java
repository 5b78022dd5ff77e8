// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/** Sets of circles for the tests, and a check of packings that shares nothing with the code that made them. */
final class Circles {

    private Circles() {
    }

    static double[] equal(int n, double diameter) {
        return IntStream.range(0, n).mapToDouble(i -> diameter).toArray();
    }

    /** Diameters of wires from 1 to 4, in steps of a tenth, as they come in a harness. */
    static double[] wires(Random random, int n) {
        return IntStream.range(0, n).mapToDouble(i -> 1 + random.nextInt(31) / 10.0).toArray();
    }

    static double root(double[] diameters) {
        return Math.sqrt(Arrays.stream(diameters).map(d -> d * d).sum());
    }

    static double[] shuffled(Random random, double[] from) {
        double[] to = from.clone();
        for (int i = to.length - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            double kept = to[i];
            to[i] = to[j];
            to[j] = kept;
        }
        return to;
    }

    /** Holds a packing against the circles asked for: all are there, none overlap, all lie within the diameter. */
    static void check(double[] asked, Packing packing) {
        double[] there = packing.circles().stream().mapToDouble(PlacedCircle::diameter).sorted().toArray();
        double[] wanted = asked.clone();
        Arrays.sort(wanted);
        assertEquals(Arrays.toString(wanted), Arrays.toString(there));
        List<PlacedCircle> circles = packing.circles();
        double around = packing.diameter() / 2;
        for (PlacedCircle one : circles) {
            assertTrue(Math.hypot(one.x(), one.y()) + one.diameter() / 2 <= around * (1 + 1e-12));
            for (PlacedCircle other : circles) {
                double touch = (one.diameter() + other.diameter()) / 2;
                assertTrue(one == other || Math.hypot(one.x() - other.x(), one.y() - other.y()) >= touch * (1 - 1e-9),
                        () -> one + " overlaps " + other);
            }
        }
    }
}
