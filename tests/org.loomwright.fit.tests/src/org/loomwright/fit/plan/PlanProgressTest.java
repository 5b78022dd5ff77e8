// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Cancelled;

/** A search says how far it is at each level, and ends as soon as it is told to. */
class PlanProgressTest {

    private static final Pattern TOLD = Pattern
            .compile("(excess|copper|length) (?:([0-9.]+) (?:mm|g)|not found yet)(?:, at least ([0-9.]+) (?:mm|g))?");
    private static final double MM = 1e6;

    /** What was found and what it is at least close on each other, and between them is what comes out at last. */
    @Test
    void eachLevelIsToldWithWhatItIsAtLeast() {
        PlanProblem problem = SeededPlatforms.of(9, 50, 30, true);
        List<String> lines = new ArrayList<>();
        HarnessPlan.Solution found = new HarnessPlanner().plan(problem, Cancel.NEVER, (what, done, total) -> lines
                .add(what)).found().orElseThrow();
        assertTrue(lines.size() > 8, lines.toString());
        closesOn(lines, "excess", found.excess() / MM);
        closesOn(lines, "copper", found.copper() / MM / MM);
        closesOn(lines, "length", found.length() / MM);
    }

    /** After so many linear programs it is the best that was found, with what no harness is below. */
    @Test
    void aPlanEndsAfterSoMuchWork() {
        PlanProblem problem = SeededPlatforms.withSlack(1);
        HarnessPlan all = new HarnessPlanner().plan(problem, Cancel.NEVER);
        HarnessPlan some = new HarnessPlanner().counting(new AtomicInteger(), 1_000).plan(problem, Cancel.NEVER);
        assertTrue(some.work().programs() < 1_500 && all.work().programs() > 3_000, some.work() + ", " + all.work());
        HarnessPlan.Solution best = all.found().orElseThrow();
        HarnessPlan.Solution found = some.found().orElseThrow();
        assertTrue(best.isBest() && !found.isBest());
        assertTrue(found.bounds().excess() <= best.excess() && best.excess() <= found.excess(), found.toString());
    }

    private static void closesOn(List<String> lines, String level, double last) {
        List<Double> best = new ArrayList<>();
        List<Double> least = new ArrayList<>();
        for (String each : lines.stream().filter(line -> line.startsWith(level)).toList()) {
            Matcher told = TOLD.matcher(each);
            assertTrue(told.matches(), each);
            if (told.group(2) != null) {
                best.add(Double.parseDouble(told.group(2)));
            }
            if (told.group(3) != null) {
                least.add(Double.parseDouble(told.group(3)));
            }
        }
        assertTrue(best.size() > 1 && !least.isEmpty(), level + ": " + lines);
        for (int i = 1; i < best.size(); i++) {
            assertTrue(best.get(i) <= best.get(i - 1), level + " rises: " + best);
        }
        assertEquals(last, best.getLast(), 0.051, level);
        assertTrue(least.stream().allMatch(each -> each <= last + 0.051), level + ": " + least);
    }

    /** Told to end at any of its questions, each search ends there, and asks no more. */
    @Test
    void aSearchThatIsCancelledEndsAtOnce() {
        PlanProblem stiff = SeededPlatforms.of(2, 20, 10, false);
        PlanProblem slack = SeededPlatforms.of(2, 20, 10, true);
        PlanProblem apart = Instances.apart(1, 12, 6);
        List<BitSet> drawings = IntStream.range(0, 12).mapToObj(v -> BitSet.valueOf(new long[] {1L << v})).toList();
        ends(cancel -> new HarnessPlanner().plan(stiff, cancel));
        ends(cancel -> new HarnessPlanner().plan(slack, cancel));
        ends(cancel -> FewestHarnesses.of(apart, drawings, new HarnessPlanner(), cancel));
        ends(cancel -> Jumpers.of(apart, new HarnessPlanner(), cancel));
        ends(cancel -> Conflict.of(apart, new HarnessPlanner(), cancel));
    }

    private static void ends(Consumer<Cancel> search) {
        AtomicInteger all = new AtomicInteger();
        search.accept(() -> {
            all.incrementAndGet();
            return false;
        });
        assertTrue(all.get() > 5, all + " questions");
        for (int at : new int[] {1, 2, all.get() / 2, all.get() - 1, all.get()}) {
            AtomicInteger asked = new AtomicInteger();
            assertThrows(Cancelled.class, () -> search.accept(() -> asked.incrementAndGet() >= at));
            assertEquals(at, asked.get());
        }
    }
}
