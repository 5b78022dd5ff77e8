// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.loomwright.harness.Measure.Provenance;
import org.loomwright.harness.Span;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/**
 * A trunk in one vehicle, in whole millimetres, with formulas of its own: what a branch misses, leaves over and runs
 * back is worked out here from the definition, not by the code under test. Positions and tucks are in steps of a
 * lattice.
 *
 * @param stations where the breakouts are made, rising
 * @param slacks   what may be taken up before each
 * @param branches what hangs on each
 */
record Chain(int[] stations, int[] slacks, List<List<Twig>> branches) {

    /** made c -tm/+tp; factory station s and length k; allowance a; limits e and b. */
    record Twig(int c, int tm, int tp, int s, int k, int a, int e, int b) {

        Demand demand() {
            return new Demand("place", "", "main", "", new Way.Direct(mm(s).nanometres()), mm(c),
                    new Tolerance(mm(tm), mm(tp)),
                    mm(k), Length.ZERO, mm(a), mm(a), mm(e), mm(b), Provenance.SHEET, Span.NONE, Span.NONE, false);
        }

        double margin(double x) {
            return c - tm - Math.abs(x - s) - k - a;
        }

        double excess(double x) {
            return c + tp - Math.abs(x - s) - k + a;
        }
    }

    static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }

    static Chain random(Random random, int most, int slack) {
        int n = 1 + random.nextInt(most);
        int[] stations = new int[n];
        int[] slacks = new int[n];
        List<List<Twig>> branches = new ArrayList<>();
        int at = 0;
        for (int k = 0; k < n; k++) {
            at += 4 + random.nextInt(8);
            stations[k] = at;
            slacks[k] = random.nextInt(slack + 1);
            List<Twig> twigs = new ArrayList<>();
            for (int i = random.nextInt(3); i > 0; i--) {
                int factory = 5 + random.nextInt(10);
                twigs.add(new Twig(factory + random.nextInt(9), random.nextInt(2), random.nextInt(3),
                        at - random.nextInt(8), factory, random.nextInt(2), 2 + random.nextInt(6), 1 + random
                                .nextInt(5)));
            }
            branches.add(twigs);
        }
        return new Chain(stations, slacks, branches);
    }

    List<FitColumn.Stop> stops() {
        List<FitColumn.Stop> stops = new ArrayList<>();
        for (int k = 0; k < stations.length; k++) {
            stops.add(new FitColumn.Stop("p" + k, mm(stations[k]), mm(slacks[k])));
        }
        return stops;
    }

    List<List<Demand>> demands() {
        return branches.stream().map(all -> all.stream().map(Twig::demand).toList()).toList();
    }

    /**
     * What a laying is worth: stage, then the figure that the stage minimises, then the sum of excess. Smaller is
     * better.
     *
     * @param tucks at each breakout, in mm
     */
    double[] worth(double[] tucks) {
        double margin = 1e9;
        double excess = -1e9;
        double over = -1e9;
        double back = -1e9;
        double sum = 0;
        for (int k = 0; k < stations.length; k++) {
            double x = stations[k] - tucks[k];
            for (Twig twig : branches.get(k)) {
                margin = Math.min(margin, twig.margin(x));
                excess = Math.max(excess, twig.excess(x));
                over = Math.max(over, twig.excess(x) - twig.e);
                back = Math.max(back, Math.abs(x - twig.s) - twig.b);
                sum += twig.excess(x);
            }
        }
        if (margin < 0) {
            return new double[] {4, -margin, sum};
        }
        if (back > 0) {
            return new double[] {3, back, sum};
        }
        return over > 0 ? new double[] {2, over, sum} : new double[] {1, excess, sum};
    }

    static int compare(double[] one, double[] other) {
        for (int i = 0; i < one.length; i++) {
            if (Math.abs(one[i] - other[i]) > 1e-9) {
                return Double.compare(one[i], other[i]);
            }
        }
        return 0;
    }

    /** The best worth over every laying whose tucks are multiples of a step. */
    double[] best(double step) {
        return best(step, 0, new double[stations.length], null);
    }

    private double[] best(double step, int k, double[] tucks, double[] best) {
        if (k == stations.length) {
            double[] worth = worth(tucks);
            return best == null || compare(worth, best) < 0 ? worth : best;
        }
        double before = k == 0 ? 0 : tucks[k - 1];
        for (int i = 0; i * step <= slacks[k] + 1e-9; i++) {
            tucks[k] = before + i * step;
            best = best(step, k + 1, tucks, best);
        }
        return best;
    }
}
