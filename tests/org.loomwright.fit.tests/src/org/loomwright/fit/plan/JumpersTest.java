// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;

class JumpersTest {

    private static final int SEEDS = 1_200;
    private static final int SLACK_SEEDS = 300;

    /** Every choice of branches and vehicles that get a jumper is tried, the smaller ones first. */
    @Test
    void noFewerJumpersDo() {
        int some = 0;
        int none = 0;
        for (int seed = 0; seed < SEEDS; seed++) {
            PlanProblem problem = Instances.tinyStiff(seed);
            if (new RigidPlanner().plan(problem, Cancel.NEVER).found().isPresent()) {
                continue;
            }
            Optional<Jumpers.Answer> answer = Jumpers.of(problem, new HarnessPlanner(), Cancel.NEVER);
            assertEquals(exhausted(problem), answer.map(each -> each.jumpers().size()).orElse(-1), "seed " + seed);
            some += answer.isPresent() ? 1 : 0;
            none += answer.isPresent() ? 0 : 1;
        }
        assertTrue(some > 20 && none > 5, some + " with jumpers, " + none + " without hope");
    }

    /**
     * The same along trunks with slack, which the stiff trunk would give more. With jumpers so long each vehicle can be
     * laid, and with one of them a grid step shorter it cannot.
     */
    @Test
    void noFewerJumpersDoWithSlack() {
        int some = 0;
        int none = 0;
        int stiffNeedsMore = 0;
        for (int seed = 0; seed < SLACK_SEEDS; seed++) {
            PlanProblem problem = tight(Instances.tinyWithSlack(seed));
            if (!new HarnessPlanner().fits(problem, Cancel.NEVER).equals(Optional.of(false))) {
                continue;
            }
            Optional<Jumpers.Answer> answer = Jumpers.of(problem, new HarnessPlanner(), Cancel.NEVER);
            int least = exhausted(problem);
            assertEquals(least, answer.map(each -> each.jumpers().size()).orElse(-1), "seed " + seed);
            some += answer.isPresent() ? 1 : 0;
            none += answer.isPresent() ? 0 : 1;
            if (answer.isPresent()) {
                assertTrue(answer.get().isFewest(), "seed " + seed);
                Optional<Jumpers.Answer> stiff = Jumpers.of(stiff(problem), new HarnessPlanner(), Cancel.NEVER);
                stiffNeedsMore += stiff.isEmpty() || stiff.get().jumpers().size() > least ? 1 : 0;
                assertTrue(isLaid(problem, answer.get(), -1), "seed " + seed);
                for (int i = 0; i < least; i++) {
                    assertTrue(!isLaid(problem, answer.get(), i), "seed " + seed + ", jumper " + i + " can be shorter");
                }
            }
        }
        assertTrue(some > 20 && none > 5 && stiffNeedsMore > 3, some + " with jumpers, " + none + " without hope, "
                + stiffNeedsMore + " with more as stiff");
    }

    /** Twenty drawings of twelve places with slack: proved, and with fewer jumpers than the stiff trunk would need. */
    @Test
    void fewJumpersServeAPlatform() {
        int stiffNeeds = 0;
        int needed = 0;
        for (int seed = 0; seed < 4; seed++) {
            PlanProblem problem = Parts.excessAtMost(SeededPlatforms.of(seed, 20, 12, true), 0, 85_000_000);
            Jumpers.Answer answer = Jumpers.of(problem, new HarnessPlanner(), Cancel.NEVER).orElseThrow();
            assertTrue(answer.isFewest(), "seed " + seed + ": " + answer.jumpers().size() + ", at least "
                    + answer.atLeast());
            needed += answer.jumpers().size();
            stiffNeeds += Jumpers.of(stiff(problem), new HarnessPlanner(), Cancel.NEVER).orElseThrow().jumpers().size();
        }
        assertTrue(needed < stiffNeeds, needed + " with slack, " + stiffNeeds + " without");
    }

    /** The same with excess that is harder to keep, so that few fit. */
    private static PlanProblem tight(PlanProblem problem) {
        return new PlanProblem(problem.trunks().stream().map(trunk -> new PlanTrunk(trunk.name(), trunk.stops().stream()
                .map(stop -> stop.with(stop.branches().stream().map(each -> new PlanBranch(each.name(), each.made(),
                        each.pinned(), each.excessLimit() * 2 / 3, each.backLimit(), each.longest(), each.weight(), each
                                .count(), each.asks(), each.stops())).toList())).toList(), trunk.lattice())).toList(),
                problem.vehicles(), problem.grid(), problem.order());
    }

    private static PlanProblem stiff(PlanProblem problem) {
        return new PlanProblem(problem.trunks().stream().map(trunk -> new PlanTrunk(trunk.name(), trunk.stops().stream()
                .map(stop -> new PlanStop(stop.name(), stop.first(), stop.last(), stop.leastGap(), stop.mostGap(), 0,
                        stop.weight(), stop.branches())).toList(), trunk.lattice())).toList(), problem.vehicles(),
                problem.grid(), problem.order());
    }

    /** Lays a plan into each vehicle with every tuck, with its jumpers, one of them a grid step shorter. */
    private static boolean isLaid(PlanProblem problem, Jumpers.Answer answer, int shorter) {
        for (int v = 0; v < problem.vehicles(); v++) {
            if (!isLaid(problem, answer, shorter, v, 0, 0)) {
                return false;
            }
        }
        return true;
    }

    private static boolean isLaid(PlanProblem problem, Jumpers.Answer answer, int shorter, int v, int k, long tuck) {
        PlanTrunk trunk = problem.trunks().getFirst();
        if (k == trunk.stops().size()) {
            return true;
        }
        PlanStop stop = trunk.stops().get(k);
        for (long more = 0; more <= stop.slack(); more += trunk.lattice()) {
            long at = answer.plan().stations().get(stop.name()) - tuck - more;
            if (stop.branches().stream().allMatch(branch -> isLaid(branch, at, answer, shorter, v, problem.grid()))
                    && isLaid(problem, answer, shorter, v, k + 1, tuck + more)) {
                return true;
            }
        }
        return false;
    }

    private static boolean isLaid(PlanBranch branch, long at, Jumpers.Answer answer, int shorter, int v, long grid) {
        for (Ask ask : branch.asks()) {
            if (ask.vehicle() == v) {
                long length = answer.plan().lengths().get(branch.name());
                long jumper = 0;
                for (int i = 0; i < answer.jumpers().size(); i++) {
                    Jumpers.Jumper each = answer.jumpers().get(i);
                    if (each.vehicle() == v && each.branch().equals(branch.name())) {
                        jumper += each.length() - (i == shorter ? grid : 0);
                    }
                }
                long along = Math.abs(at - ask.station());
                long minus = branch.made().of(new Length(length)).minus().nanometres();
                long plus = branch.made().of(new Length(length)).plus().nanometres();
                if (length - minus + jumper - along < ask.reach() || length + plus - along - ask.spare() > branch
                        .excessLimit() || along > branch.backLimit()) {
                    return false;
                }
            }
        }
        return true;
    }

    private static int exhausted(PlanProblem problem) {
        int asks = problem.trunks().getFirst().stops().stream().flatMap(stop -> stop.branches().stream())
                .mapToInt(branch -> branch.asks().size()).sum();
        return IntStream.range(0, 1 << asks).filter(set -> fits(problem, set)).map(Integer::bitCount).min().orElse(-1);
    }

    private static boolean fits(PlanProblem problem, int set) {
        int[] next = {0};
        boolean[] bare = {false};
        List<PlanStop> stops = problem.trunks().getFirst().stops().stream().map(stop -> stop.with(stop.branches()
                .stream().map(branch -> {
                    int from = next[0];
                    next[0] += branch.asks().size();
                    int own = set >> from & (1 << branch.asks().size()) - 1;
                    bare[0] |= !branch.asks().isEmpty() && Integer.bitCount(own) == branch.asks().size();
                    return branch.with(IntStream.range(0, branch.asks().size()).mapToObj(i -> (own >> i & 1) == 1
                            ? Jumpers.eased(branch.asks().get(i), branch) : branch.asks().get(i)).toList(), List.of());
                }).toList())).toList();
        return !bare[0] && new HarnessPlanner().fits(new PlanProblem(List.of(new PlanTrunk("main", stops,
                problem.trunks().getFirst().lattice())), problem.vehicles(), problem.grid(), problem.order()),
                Cancel.NEVER)
                        .orElseThrow();
    }
}
