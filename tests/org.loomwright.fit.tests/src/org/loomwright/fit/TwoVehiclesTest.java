// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.loomwright.condition.Choices;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Vehicles;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Span;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Tolerance;

/**
 * Two vehicles, one place, a rigid trunk, lengths not rounded: a breakout and a branch that serve both exist unless |Ku
 * - Kv| - |su - sv| > E - (tm + tp + au + av), and the breakouts that do form an interval. Lengths are tried here in
 * steps of half a millimetre, with data in whole ones.
 */
class TwoVehiclesTest {

    private static final int HALVES = 2;

    private final Condition vehicles = Vehicles.of(Choices.builder().build()).all();

    private record Vehicle(int s, int k, int a) {
    }

    private boolean fits(double breakout, double made, int tm, int tp, int limit, List<Vehicle> all) {
        FitColumn.Trunk trunk = new FitColumn.Trunk("main",
                List.of(new FitColumn.Stop("p", Chain.mm(breakout), Chain.mm(0))));
        List<FitColumn> columns = all.stream().map(each -> {
            Demand demand = new Demand("place", "b", "main", "p", new Way.Direct(Chain.mm(each.s()).nanometres()), Chain
                    .mm(made),
                    new Tolerance(Chain.mm(tm), Chain.mm(tp)), Chain.mm(each.k()), Chain.mm(0),
                    Chain.mm(each.a()), Chain.mm(each.a()), Chain.mm(limit), Chain.mm(1_000),
                    Measure.Provenance.SHEET, Span.NONE, Span.NONE, false);
            return new FitColumn("front", vehicles, true, List.of(trunk),
                    List.of(new FitColumn.Asked(0, new Requirement.Reach(demand))));
        }).toList();
        FitProblem problem = new FitProblem("ours", List.of(new FitRow("lamp", "b1", "main", Span.NONE)), columns, List
                .of(),
                new Evidence(1, 0, 0, 0), List.of());
        return new ChainJudge().judge(problem, Cancel.NEVER).verdict() == FitReport.Verdict.FITS;
    }

    /** The least branch that reaches in both is the best for the excess of both. */
    private static double least(double breakout, int tm, List<Vehicle> all) {
        return all.stream().mapToDouble(each -> Math.abs(breakout - each.s()) + each.k() + each.a()).max().orElseThrow()
                + tm;
    }

    private List<Double> servingBreakouts(int tm, int tp, int limit, List<Vehicle> all) {
        return IntStream.rangeClosed(0, 80 * HALVES).mapToObj(each -> each / (double) HALVES)
                .filter(t -> fits(t, least(t, tm, all), tm, tp, limit, all)).toList();
    }

    @Test
    void breakoutThatServesBothExistsExactlyWhenTheClosedFormSaysSo() {
        Random random = new Random(21);
        int served = 0;
        int rounds = 200;
        for (int round = 0; round < rounds; round++) {
            int tm = random.nextInt(3);
            int tp = random.nextInt(5);
            int limit = random.nextInt(30);
            List<Vehicle> both = Stream.generate(() -> new Vehicle(20 + random.nextInt(40), random.nextInt(40),
                    random.nextInt(4))).limit(2).toList();
            Vehicle u = both.getFirst();
            Vehicle v = both.getLast();
            boolean conflict = Math.abs(u.k() - v.k()) - Math.abs(u.s() - v.s()) > limit - (tm + tp + u.a() + v.a());
            // one vehicle alone must not be in the way: its own tolerances may already be more than the limit
            boolean alone = both.stream().allMatch(each -> tm + tp + 2 * each.a() <= limit);
            if (!alone) {
                continue;
            }
            List<Double> serving = servingBreakouts(tm, tp, limit, both);
            assertEquals(conflict, serving.isEmpty(), () -> both + " limit " + limit);
            if (!serving.isEmpty()) {
                served++;
                assertEquals((serving.getLast() - serving.getFirst()) * HALVES + 1, serving.size(), 1e-9,
                        () -> "no gap: " + serving);
            }
        }
        int some = served;
        assertTrue(some > 50 && some < rounds - 50, () -> "both outcomes occur: " + some);
    }

    /** What one vehicle allows for a given branch is not an interval: near its own station the branch is too long. */
    @Test
    void oneVehicleAloneMayLeaveAGap() {
        List<Vehicle> one = List.of(new Vehicle(40, 20, 0));
        List<Double> serving = IntStream.rangeClosed(0, 80).mapToObj(each -> (double) each)
                .filter(t -> fits(t, 50, 0, 0, 10, one)).toList();
        // excess 50 - |t - 40| - 20 is at most 10 from 20 away on, and the branch reaches up to 30 away
        List<Double> expected = Stream.concat(IntStream.rangeClosed(10, 20).boxed(), IntStream.rangeClosed(60, 70)
                .boxed())
                .map(Integer::doubleValue).toList();
        assertEquals(expected, serving);
    }
}
