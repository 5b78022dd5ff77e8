// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.OptionalLong;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.quantity.CutTolerance;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/** What must hold of every plan, whatever the figures. */
class PlanPropertiesTest {

    private static final int SEEDS = 40;

    private static Optional<HarnessPlan.Solution> plan(PlanProblem problem) {
        return new HarnessPlanner().plan(problem, Cancel.NEVER).found();
    }

    private static PlanProblem with(PlanProblem problem, UnaryOperator<PlanBranch> change, long grid,
            UnaryOperator<PlanStop> stop) {
        return new PlanProblem(problem.trunks().stream().map(trunk -> new PlanTrunk(trunk.name(), trunk.stops().stream()
                .map(each -> stop.apply(new PlanStop(each.name(), each.first(), each.last(), each.leastGap(),
                        each.mostGap(), each.slack(), each.weight(), each.branches().stream().map(change).toList())))
                .toList(), trunk.lattice())).toList(), problem.vehicles(), grid, problem.order());
    }

    private static PlanBranch asking(PlanBranch branch, List<Ask> asks) {
        return new PlanBranch(branch.name(), branch.made(), branch.pinned(), branch.excessLimit(), branch.backLimit(),
                branch.longest(), branch.weight(), branch.count(), asks, branch.stops());
    }

    @Test
    void stationsThatAreAllFartherOffMoveThePlan() {
        for (int seed = 0; seed < SEEDS; seed++) {
            moves(Instances.ordinary(seed, 6, 6));
            moves(Instances.ordinaryWithSlack(seed, 5, 4));
        }
    }

    /** By whole grid steps; the first breakout has no least distance from the datum, before and after. */
    private static void moves(PlanProblem stated) {
        long shift = 7 * stated.grid();
        PlanProblem problem = with(stated, branch -> branch, stated.grid(), PlanPropertiesTest::free);
        PlanProblem moved = with(problem, branch -> asking(branch, branch.asks().stream().map(ask -> new Ask(
                ask.vehicle(), ask.station() + shift, ask.reach(), ask.spare())).toList()), problem.grid(),
                stop -> stop);
        HarnessPlan.Solution one = plan(problem).orElseThrow();
        HarnessPlan.Solution other = plan(moved).orElseThrow();
        long trunk = problem.trunks().getFirst().stops().getFirst().weight();
        assertEquals(List.of(one.excess(), one.copper() + shift * trunk, one.length()),
                List.of(other.excess(), other.copper(), other.length()));
        if (problem.trunks().getFirst().stops().stream().allMatch(stop -> stop.slack() == 0)) {
            assertEquals(one.stations().entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey,
                    each -> each.getValue() + shift)), other.stations());
            assertEquals(one.lengths(), other.lengths());
        }
    }

    private static PlanStop free(PlanStop stop) {
        return !stop.name().equals("t0") ? stop : new PlanStop(stop.name(), 0, stop.last(), stop.slack(),
                stop.mostGap(), stop.slack(), stop.weight(), stop.branches());
    }

    @Test
    void everythingThreeTimesAsLongIsAPlanThreeTimesAsLong() {
        for (int seed = 0; seed < SEEDS; seed++) {
            grows(Instances.tiny(seed), "seed " + seed);
            grows(Instances.tinyWithSlack(seed), "with slack, seed " + seed);
            grows(Instances.ordinaryWithSlack(seed, 5, 4), "ordinary, seed " + seed);
        }
    }

    private static void grows(PlanProblem problem, String name) {
        PlanProblem wider = with(problem, PlanPropertiesTest::tripled, 3 * problem.grid(), stop -> new PlanStop(
                stop.name(), 3 * stop.first(), 3 * stop.last(), 3 * stop.leastGap(), 3 * stop.mostGap(),
                3 * stop.slack(), stop.weight(), stop.branches()));
        PlanProblem larger = new PlanProblem(wider.trunks().stream().map(trunk -> new PlanTrunk(trunk.name(),
                trunk.stops(), 3 * trunk.lattice())).toList(), wider.vehicles(), wider.grid(), wider.order());
        assertEquals(plan(problem).map(each -> List.of(3 * each.excess(), 3 * each.copper(), 3 * each.length())),
                plan(larger).map(each -> List.of(each.excess(), each.copper(), each.length())), name);
    }

    private static PlanBranch tripled(PlanBranch branch) {
        Tolerance made = branch.made().of(Length.ZERO);
        CutTolerance table = Instances.constant(3 * made.minus().nanometres(), 3 * made.plus().nanometres());
        OptionalLong pinned = branch.pinned().isEmpty() ? branch.pinned() : OptionalLong.of(3 * branch.pinned()
                .getAsLong());
        return new PlanBranch(branch.name(), table, pinned, 3 * branch.excessLimit(), 3 * branch.backLimit(),
                3 * branch.longest(), branch.weight(), branch.count(), branch.asks().stream().map(ask -> new Ask(
                        ask.vehicle(), 3 * ask.station(), 3 * ask.reach(), 3 * ask.spare())).toList(),
                branch.stops().stream().map(stop -> new PlanStop(stop.name(), 3 * stop.first(), 3 * stop.last(),
                        3 * stop.leastGap(), 3 * stop.mostGap(), 3 * stop.slack(), stop.weight(),
                        stop.branches().stream().map(PlanPropertiesTest::tripled).toList())).toList());
    }

    @Test
    void oneMoreVehicleNeverLowersTheFirstObjective() {
        for (int seed = 0; seed < SEEDS; seed++) {
            for (PlanProblem each : List.of(Instances.ordinary(seed, 8, 5), Instances.ordinaryWithSlack(seed, 6, 4))) {
                rises(each, "seed " + seed);
                rises(new PlanProblem(each.trunks(), each.vehicles(), each.grid(), List.of(Objective.COPPER,
                        Objective.EXCESS, Objective.LENGTH)), "copper first, seed " + seed);
            }
        }
    }

    private static void rises(PlanProblem problem, String name) {
        long before = Long.MIN_VALUE;
        for (int count = 1; count <= problem.vehicles(); count++) {
            BitSet kept = new BitSet();
            kept.set(0, count);
            HarnessPlan.Solution found = plan(Parts.vehicles(problem, kept)).orElseThrow();
            long first = problem.order().getFirst() == Objective.EXCESS ? found.excess() : found.copper();
            assertTrue(first >= before, name + ", " + count + " vehicles");
            before = first;
        }
    }

    @Test
    void theOrderOfTheVehiclesDoesNotMatter() {
        for (int seed = 0; seed < SEEDS; seed++) {
            turned(Instances.ordinary(seed, 7, 5));
            turned(Instances.ordinaryWithSlack(seed, 5, 4));
        }
    }

    private static void turned(PlanProblem problem) {
        PlanProblem turned = with(problem, branch -> asking(branch, branch.asks().stream().map(ask -> new Ask(
                problem.vehicles() - 1 - ask.vehicle(), ask.station(), ask.reach(), ask.spare())).toList()
                .reversed()), problem.grid(), stop -> stop);
        assertEquals(new HarnessPlanner().plan(problem, Cancel.NEVER).found(),
                new HarnessPlanner().plan(turned, Cancel.NEVER).found());
    }

    /** What lies between two others and needs no more than they do is served with them. */
    @Test
    void aVehicleBetweenTwoOthersChangesNothing() {
        for (int seed = 0; seed < SEEDS; seed++) {
            between(Instances.ordinary(seed, 6, 5));
            between(Instances.ordinaryWithSlack(seed, 5, 4));
        }
    }

    private static void between(PlanProblem stated) {
        PlanProblem problem = new PlanProblem(with(stated, PlanPropertiesTest::boundless, stated.grid(),
                stop -> stop).trunks(), stated.vehicles(), stated.grid(),
                List.of(Objective.COPPER, Objective.LENGTH, Objective.EXCESS));
        PlanProblem more = new PlanProblem(with(problem, branch -> {
            List<Ask> two = branch.asks().stream().filter(ask -> ask.vehicle() < 2).toList();
            if (two.size() < 2) {
                return branch;
            }
            List<Ask> asks = new ArrayList<>(branch.asks());
            long reach = (two.get(0).reach() + two.get(1).reach()) / 2 - 1_000_000;
            asks.add(new Ask(problem.vehicles(), (two.get(0).station() + two.get(1).station()) / 2, reach, reach));
            return asking(branch, asks);
        }, problem.grid(), stop -> stop).trunks(), problem.vehicles() + 1, problem.grid(), problem.order());
        HarnessPlan.Solution one = new HarnessPlanner().plan(problem, Cancel.NEVER).found().orElseThrow();
        HarnessPlan.Solution other = new HarnessPlanner().plan(more, Cancel.NEVER).found().orElseThrow();
        assertEquals(List.of(one.copper(), one.length()), List.of(other.copper(), other.length()));
    }

    private static PlanBranch boundless(PlanBranch branch) {
        return new PlanBranch(branch.name(), branch.made(), branch.pinned(), 1_000_000_000_000L, branch.backLimit(),
                branch.longest(), branch.weight(), branch.count(), branch.asks(), branch.stops());
    }

    /** Without any one vehicle or branch of it, a harness fits. */
    @Test
    void aConflictIsMinimal() {
        int conflicts = 0;
        for (int seed = 0; seed < 700; seed++) {
            PlanProblem problem = Instances.tiny(seed);
            Optional<Conflict> conflict = Conflict.of(problem, new HarnessPlanner(), Cancel.NEVER);
            assertEquals(plan(problem).isEmpty(), conflict.isPresent(), "seed " + seed);
            if (conflict.isPresent()) {
                conflicts++;
                BitSet vehicles = new BitSet();
                conflict.get().vehicles().forEach(vehicles::set);
                PlanProblem core = Parts.branches(Parts.vehicles(problem, vehicles),
                        new HashSet<>(conflict.get().branches()));
                assertTrue(plan(core).isEmpty(), "seed " + seed);
                for (int v : conflict.get().vehicles()) {
                    BitSet less = (BitSet) vehicles.clone();
                    less.clear(v);
                    assertFalse(plan(Parts.vehicles(core, less)).isEmpty(), "seed " + seed + " without " + v);
                }
                for (String branch : conflict.get().branches()) {
                    List<String> less = new ArrayList<>(conflict.get().branches());
                    less.remove(branch);
                    assertFalse(plan(Parts.branches(core, new HashSet<>(less))).isEmpty(), branch);
                }
            }
        }
        assertTrue(conflicts > 50, conflicts + " conflicts");
    }

    /** The fewest groups by the least over all subsets, each of which is planned. */
    @Test
    void theFewestHarnessesAgreeWithExhaustion() {
        int several = 0;
        for (int seed = 0; seed < 60; seed++) {
            PlanProblem problem = Instances.apart(seed, 5, 3);
            FewestHarnesses.Answer answer = fewest(problem);
            int exhausted = groups(problem, 5);
            assertEquals(exhausted, answer.groups().size(), "seed " + seed);
            assertTrue(answer.apart().size() <= exhausted);
            several += exhausted > 1 ? 1 : 0;
        }
        assertTrue(several > 8, several + " of 60 need several");
    }

    private static FewestHarnesses.Answer fewest(PlanProblem problem) {
        List<BitSet> drawings = IntStream.range(0, problem.vehicles())
                .mapToObj(v -> BitSet.valueOf(new long[] {1L << v})).toList();
        return FewestHarnesses.of(problem, drawings, new HarnessPlanner(), Cancel.NEVER);
    }

    /** Drawings that quarrel in pairs at random: some need more harnesses than drawings of which no two go together. */
    @Test
    void theFewestHarnessesAgreeWhereDrawingsQuarrelInPairs() {
        Random random = new Random(17);
        int more = 0;
        for (int round = 0; round < 60; round++) {
            int count = 5 + round % 4;
            List<int[]> pairs = new ArrayList<>();
            for (int v = 1; v < count; v++) {
                for (int u = 0; u < v; u++) {
                    if (random.nextInt(100) < 55) {
                        pairs.add(new int[] {u, v});
                    }
                }
            }
            PlanProblem problem = Instances.quarrel(count, pairs);
            FewestHarnesses.Answer answer = fewest(problem);
            assertEquals(groups(problem, count), answer.groups().size(), "round " + round);
            assertTrue(answer.isFewest());
            more += answer.isClique() ? 0 : 1;
        }
        assertTrue(more > 0, "each number is proved by drawings of which no two go together");
    }

    /**
     * The graph of J. Mycielski (Sur le coloriage des graphes, Colloquium Mathematicum 3, 1955; from memory): eleven
     * points, of no three of which each is joined to the others, and yet no three colours do.
     */
    @Tag("outside")
    @Test
    void fourHarnessesAreNeededThoughNoThreeDrawingsQuarrel() {
        FewestHarnesses.Answer answer = fewest(mycielski());
        assertEquals(4, answer.groups().size());
        assertEquals(2, answer.apart().size());
        assertTrue(answer.isFewest() && !answer.isClique());
    }

    /** With little work for each number, some harnesses that do are found, and are not called the fewest. */
    @Test
    void whatWasNotTriedIsNotCalledTheFewest() {
        PlanProblem problem = mycielski();
        FewestHarnesses.Answer answer = FewestHarnesses.of(problem, IntStream.range(0, 11).mapToObj(each -> BitSet
                .valueOf(new long[] {1L << each})).toList(), new HarnessPlanner(), 1, Cancel.NEVER, Progress.NONE);
        assertEquals(2, answer.apart().size());
        assertTrue(!answer.isFewest() && answer.open() == 0, answer.toString());
        assertEquals(IntStream.range(0, 11).boxed().toList(), answer.groups().stream().flatMap(List::stream).sorted()
                .toList());
        for (List<Integer> group : answer.groups()) {
            BitSet vehicles = new BitSet();
            group.forEach(vehicles::set);
            assertTrue(plan(Parts.vehicles(problem, vehicles)).isPresent(), group.toString());
        }
    }

    private static PlanProblem mycielski() {
        List<int[]> pairs = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            pairs.add(new int[] {i, (i + 1) % 5});
            pairs.add(new int[] {5 + i, (i + 1) % 5});
            pairs.add(new int[] {5 + i, (i + 4) % 5});
            pairs.add(new int[] {5 + i, 10});
        }
        return Instances.quarrel(11, pairs);
    }

    private static int groups(PlanProblem problem, int count) {
        int[] fewest = new int[1 << count];
        boolean[] fits = new boolean[1 << count];
        for (int set = 1; set < fewest.length; set++) {
            fits[set] = plan(Parts.vehicles(problem, BitSet.valueOf(new long[] {set}))).isPresent();
            fewest[set] = count + 1;
            for (int group = set; group > 0; group = (group - 1) & set) {
                fewest[set] = fits[group] ? Math.min(fewest[set], 1 + fewest[set & ~group]) : fewest[set];
            }
        }
        return fewest[fewest.length - 1];
    }
}
