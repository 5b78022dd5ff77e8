// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Cancel;

/** A linear program that is not solved says nothing, and time that is up proves nothing. */
class UnsolvedProgramsTest {

    private static final int TINY = 150;

    /** A solver that gives up on some programs, by chance. */
    private static LinearProgram.Solver failing(int seed, int outOf, AtomicLong failed) {
        Random random = new Random(seed);
        return objective -> {
            LinearProgram library = new LibraryProgram(objective);
            return (low, high, rows) -> {
                if (random.nextInt(outOf) == 0) {
                    failed.incrementAndGet();
                    return new LinearProgram.Answer.NotKnown();
                }
                return library.solve(low, high, rows);
            };
        };
    }

    /** With one program in three given up, brute force still agrees at every level, and so does what is impossible. */
    @Test
    void programsThatAreNotSolvedChangeNothing() {
        AtomicLong failed = new AtomicLong();
        int none = 0;
        for (int seed = 0; seed < TINY; seed++) {
            PlanProblem problem = Instances.tinyWithSlack(seed);
            HarnessPlan plan = new HarnessPlanner(Cancel.NEVER, failing(seed, 3, failed)).plan(problem, Cancel.NEVER);
            Optional<long[]> best = SlackBruteForce.best(problem);
            assertEquals(best.map(Figures::new), plan.found().map(each -> new Figures(new long[] {each.excess(),
                each.copper(), each.length()})), "seed " + seed);
            assertTrue(plan.settled(), "seed " + seed);
            none += best.isEmpty() ? 1 : 0;
        }
        assertTrue(failed.get() > 100 && none > 10, failed + " given up, " + none + " impossible");
    }

    /** Three figures that compare by value. */
    private record Figures(long excess, long copper, long length) {

        Figures(long[] three) {
            this(three[0], three[1], three[2]);
        }
    }

    /** Whether one fits is found without any program, by looking at each harness one by one. */
    @Test
    void aSolverThatAlwaysGivesUpProvesNothingWrong() {
        LinearProgram.Solver none = objective -> (low, high, rows) -> new LinearProgram.Answer.NotKnown();
        for (int seed = 0; seed < 60; seed++) {
            PlanProblem problem = Instances.tinyWithSlack(seed);
            if (problem.trunks().getFirst().stops().size() > 1) {
                continue;
            }
            assertEquals(Optional.of(SlackBruteForce.best(problem).isPresent()),
                    new HarnessPlanner(Cancel.NEVER, none).fits(problem, Cancel.NEVER), "seed " + seed);
        }
    }

    /** Whatever moment the time is up at, only what is true is called proved. */
    @Test
    void whenTimeIsUpNothingIsClaimedThatIsNotSo() {
        int unsettled = 0;
        for (int seed = 0; seed < TINY; seed++) {
            PlanProblem problem = Instances.tinyWithSlack(seed);
            Optional<long[]> best = SlackBruteForce.best(problem);
            for (int questions : new int[] {0, 1, 2, 4, 8, 16}) {
                HarnessPlan plan = new HarnessPlanner(after(questions)).plan(problem, Cancel.NEVER);
                assertFalse(plan.isImpossible() && best.isPresent(), "seed " + seed);
                plan.found().ifPresent(found -> {
                    assertTrue(found.bounds().excess() <= found.excess());
                    if (problem.order().getFirst() == Objective.EXCESS) {
                        assertTrue(found.bounds().excess() <= best.orElseThrow()[0]
                                && best.get()[0] <= found.excess());
                    }
                });
                if (plan.settled()) {
                    assertEquals(best.map(Figures::new), plan.found().map(each -> new Figures(new long[] {
                        each.excess(), each.copper(), each.length()})), "seed " + seed);
                } else {
                    unsettled++;
                }
            }
        }
        assertTrue(unsettled > 50, unsettled + " ended before the proof");
    }

    private static Cancel after(int questions) {
        AtomicLong left = new AtomicLong(questions);
        return () -> left.decrementAndGet() < 0;
    }

    /** Sets of which it is not known whether a harness fits make the number of harnesses one that was found only. */
    @Test
    void theFewestAreNotClaimedWhenSetsAreNotKnown() {
        int open = 0;
        for (int seed = 0; seed < 40; seed++) {
            PlanProblem problem = slack(Instances.apart(seed, 4, 3));
            List<BitSet> drawings = IntStream.range(0, 4).mapToObj(v -> BitSet.valueOf(new long[] {1L << v})).toList();
            int fewest = FewestHarnesses.of(problem, drawings, new HarnessPlanner(), Cancel.NEVER).groups().size();
            for (int questions : new int[] {0, 3, 10}) {
                FewestHarnesses.Answer answer = FewestHarnesses.of(problem, drawings,
                        new HarnessPlanner(after(questions)), Cancel.NEVER);
                boolean all = answer.unclear().isEmpty();
                assertTrue(answer.alone().isEmpty());
                assertTrue(answer.apart().size() <= fewest);
                if (all && answer.isFewest()) {
                    assertEquals(fewest, answer.groups().size(), "seed " + seed);
                }
                if (all && answer.groups().size() > fewest) {
                    assertFalse(answer.isFewest(), "seed " + seed);
                }
                open += answer.open();
            }
        }
        assertTrue(open > 5, open + " sets were open");
    }

    private static PlanProblem slack(PlanProblem stiff) {
        List<PlanStop> stops = new ArrayList<>();
        for (PlanStop stop : stiff.trunks().getFirst().stops()) {
            stops.add(new PlanStop(stop.name(), stop.first(), stop.last(), stop.leastGap(), stop.mostGap(),
                    stops.size() == 1 ? 20_000_000 : 0, stop.weight(), stop.branches()));
        }
        return new PlanProblem(List.of(new PlanTrunk("main", stops, 1_000_000)), stiff.vehicles(), stiff.grid(),
                stiff.order());
    }
}
