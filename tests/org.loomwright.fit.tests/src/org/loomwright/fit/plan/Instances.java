// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.CutTolerance;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/** Seeded problems of any size. All lengths in whole millimetres, which are the unit of the problem. */
final class Instances {

    static final long FREE = 1_000_000;

    private Instances() {
    }

    /** A table that gives the same tolerance to every length. */
    static CutTolerance constant(long minus, long plus) {
        Tolerance tolerance = new Tolerance(new Length(minus), new Length(plus));
        return new CutTolerance(List.of(new CutTolerance.Band(new Length(Long.MAX_VALUE), tolerance)), 0, "test");
    }

    /** A few stops within 120 units, so that every harness can be listed. */
    static PlanProblem tiny(int seed) {
        Random random = new Random(seed);
        int vehicles = 1 + random.nextInt(3);
        List<PlanStop> stops = new ArrayList<>();
        int count = 1 + random.nextInt(3);
        long before = 0;
        for (int k = 0; k < count; k++) {
            before += 10 + random.nextInt(25);
            List<PlanBranch> branches = new ArrayList<>();
            for (int b = random.nextInt(4) == 0 ? 2 : 1; b > 0; b--) {
                branches.add(tinyBranch(random, "b" + k + b, vehicles, before, random.nextInt(4) == 0));
            }
            long first = random.nextInt(5) == 0 ? before - 10 : 0;
            long last = random.nextInt(5) == 0 ? before + 10 : FREE;
            long least = random.nextInt(3) * 10L;
            stops.add(new PlanStop("t" + k, first, last, least, random.nextInt(4) == 0 ? least + 20 : FREE, 0,
                    1 + random.nextInt(6), branches));
        }
        List<Objective> order = random.nextBoolean() ? List.of(Objective.EXCESS, Objective.COPPER, Objective.LENGTH)
                : List.of(Objective.COPPER, Objective.EXCESS, Objective.LENGTH);
        return new PlanProblem(List.of(new PlanTrunk("main", stops)), vehicles, 10, order);
    }

    /** Two trunks from one datum, with up to two breakouts on one and one on the other. */
    static PlanProblem tinyBothWays(int seed) {
        PlanProblem one = tiny(seed);
        PlanProblem other = tiny(seed + 20_000);
        List<PlanStop> ahead = one.trunks().getFirst().stops();
        PlanStop back = other.trunks().getFirst().stops().getFirst();
        PlanStop renamed = new PlanStop("back", back.first(), back.last(), back.leastGap(), back.mostGap(),
                back.slack(), back.weight(), back.branches().stream().map(branch -> new PlanBranch("back" + branch
                        .name(), branch.made(), branch.pinned(), branch.excessLimit(), branch.backLimit(), branch
                                .longest(), branch.weight(), branch.count(), branch.asks(), List.of())).toList());
        return new PlanProblem(List.of(new PlanTrunk("ahead", ahead.subList(0, Math.min(2, ahead.size()))),
                new PlanTrunk("back", List.of(renamed))), Math.max(one.vehicles(), other.vehicles()), one.grid(),
                one.order());
    }

    /** The same without branches on branches. */
    static PlanProblem tinyStiff(int seed) {
        PlanProblem tiny = tiny(seed);
        return new PlanProblem(tiny.trunks().stream().map(Parts::bare).toList(), tiny.vehicles(), tiny.grid(),
                tiny.order());
    }

    /** The same with slack and without branches on branches. */
    static PlanProblem tinyWithSlack(int seed) {
        Random random = new Random(7_000 + seed);
        int vehicles = 1 + random.nextInt(3);
        int count = 1 + random.nextInt(3);
        long grid = count == 3 ? 20 : 10;
        long lattice = List.of(1L, 2L, 5L).get(random.nextInt(3));
        List<PlanStop> stops = new ArrayList<>();
        long before = 0;
        for (int k = 0; k < count; k++) {
            before += 15 + random.nextInt(15);
            List<PlanBranch> branches = new ArrayList<>();
            for (int b = count < 3 && random.nextInt(5) == 0 ? 2 : 1; b > 0; b--) {
                branches.add(tinyBranch(random, "b" + k + b, vehicles, before, false));
            }
            long slack = random.nextInt(3) * 4L;
            boolean pinned = random.nextInt(8) == 0;
            long least = Math.max(slack, random.nextInt(3) * 10L);
            stops.add(new PlanStop("t" + k, pinned ? before + 3 : 0, pinned ? before + 3 : FREE, least,
                    random.nextInt(4) == 0 ? least + 20 : FREE, slack, 1 + random.nextInt(6), branches));
        }
        List<Objective> order = random.nextBoolean() ? List.of(Objective.EXCESS, Objective.COPPER, Objective.LENGTH)
                : List.of(Objective.COPPER, Objective.EXCESS, Objective.LENGTH);
        return new PlanProblem(List.of(new PlanTrunk("main", stops, lattice)), vehicles, grid, order);
    }

    /** A problem without branches on branches, all lengths so many times as long, and tucks in steps of their own. */
    static PlanProblem scaled(PlanProblem problem, long times, long lattice) {
        return new PlanProblem(problem.trunks().stream().map(trunk -> new PlanTrunk(trunk.name(), trunk.stops().stream()
                .map(stop -> new PlanStop(stop.name(), times * stop.first(), times * stop.last(),
                        times * stop.leastGap(), times * stop.mostGap(), times * stop.slack(), stop.weight(),
                        stop.branches().stream().map(branch -> scaled(branch, times)).toList())).toList(), lattice))
                .toList(), problem.vehicles(), times * problem.grid(), problem.order());
    }

    private static PlanBranch scaled(PlanBranch branch, long times) {
        Tolerance made = branch.made().of(Length.ZERO);
        return new PlanBranch(branch.name(), constant(times * made.minus().nanometres(), times * made.plus()
                .nanometres()), branch.pinned().isEmpty() ? branch.pinned() : OptionalLong.of(times * branch.pinned()
                        .getAsLong()), times * branch.excessLimit(), times * branch.backLimit(),
                times * branch.longest(), branch.weight(), branch.count(), branch.asks().stream().map(ask -> new Ask(
                        ask.vehicle(), times * ask.station(), times * ask.reach(), times * ask.spare())).toList(),
                List.of());
    }

    private static PlanBranch tinyBranch(Random random, String name, int vehicles, long around, boolean parent) {
        List<Ask> asks = new ArrayList<>();
        List<Ask> onIt = new ArrayList<>();
        for (int v = 0; v < vehicles; v++) {
            if (v == 0 || random.nextInt(5) > 0) {
                long need = 20 + random.nextInt(20);
                long allowance = random.nextInt(4);
                asks.add(new Ask(v, Math.max(0, around - 12 + random.nextInt(25)), need + allowance, need - allowance));
                onIt.add(new Ask(v, random.nextInt(20), 15 + random.nextInt(10), 12));
            }
        }
        List<PlanStop> stops = !parent ? List.of() : List.of(new PlanStop("s" + name, 0, FREE, 0, FREE, 0, 2,
                List.of(new PlanBranch("c" + name, constant(1, 4), OptionalLong.empty(), 45 + random.nextInt(30), 30,
                        FREE, 3, 1, onIt, List.of()))));
        return new PlanBranch(name, constant(random.nextInt(3), random.nextInt(6)),
                random.nextInt(8) == 0 ? OptionalLong.of(47) : OptionalLong.empty(), 25 + random.nextInt(40),
                10 + random.nextInt(20), random.nextInt(6) == 0 ? 60 : FREE, 1 + random.nextInt(5),
                1 + random.nextInt(9), asks, stops);
    }

    /** A harness of ordinary size for vehicles that differ by some centimetres; lengths in nanometres. */
    static PlanProblem ordinary(int seed, int vehicles, int places) {
        return sized(seed, vehicles, places, 25);
    }

    /** The same with slack in every other stretch. */
    static PlanProblem ordinaryWithSlack(int seed, int vehicles, int places) {
        PlanProblem stiff = sized(seed, vehicles, places, 25);
        List<PlanStop> stops = new ArrayList<>();
        for (PlanStop stop : stiff.trunks().getFirst().stops()) {
            long slack = stops.size() % 2 == 0 ? 0 : (5L + seed % 4 * 5) * 1_000_000;
            stops.add(new PlanStop(stop.name(), stop.first(), stop.last(), stop.leastGap(), stop.mostGap(), slack,
                    stop.weight(), stop.branches()));
        }
        return new PlanProblem(List.of(new PlanTrunk("main", stops)), vehicles, stiff.grid(), stiff.order());
    }

    /** The same for vehicles that differ by so much that one harness seldom serves all. */
    static PlanProblem apart(int seed, int vehicles, int places) {
        return sized(seed, vehicles, places, 170);
    }

    /** One place for each pair of vehicles, which only these two have, and which no branch can serve in both. */
    static PlanProblem quarrel(int vehicles, List<int[]> pairs) {
        long mm = 1_000_000;
        List<PlanStop> stops = new ArrayList<>();
        for (int[] pair : pairs) {
            long station = (stops.size() + 1) * 400 * mm;
            List<Ask> asks = List.of(new Ask(pair[0], station, 200 * mm, 200 * mm),
                    new Ask(pair[1], station, 500 * mm, 500 * mm));
            stops.add(new PlanStop("t" + stops.size(), 0, FREE * mm, 20 * mm, FREE * mm, 0, 1, List.of(new PlanBranch(
                    "b" + stops.size(), constant(0, 0), OptionalLong.empty(), 250 * mm, 150 * mm, FREE * mm, 1, 2,
                    asks, List.of()))));
        }
        return new PlanProblem(List.of(new PlanTrunk("main", stops)), vehicles, 5 * mm,
                List.of(Objective.EXCESS, Objective.COPPER, Objective.LENGTH));
    }

    private static PlanProblem sized(int seed, int vehicles, int places, int spread) {
        long mm = 1_000_000;
        Random random = new Random(seed);
        List<PlanStop> stops = new ArrayList<>();
        long station = 0;
        for (int k = 0; k < places; k++) {
            station += 60 + random.nextInt(120);
            List<Ask> asks = new ArrayList<>();
            long need = 120 + random.nextInt(400);
            for (int v = 0; v < vehicles; v++) {
                if (v == k % vehicles || random.nextInt(10) > 0) {
                    long length = need + random.nextInt(41) - 20;
                    long allowance = 8 + random.nextInt(10);
                    long at = Math.max(0, station + random.nextInt(2 * spread + 1) - spread);
                    asks.add(new Ask(v, at * mm, (length + allowance) * mm, (length - allowance) * mm));
                }
            }
            stops.add(new PlanStop("t" + k, 0, FREE * mm, 20 * mm, FREE * mm, 0, 20 + 12L * (places - k),
                    List.of(new PlanBranch("b" + k, constant(0, 25 * mm), OptionalLong.empty(), 250 * mm, 150 * mm,
                            FREE * mm, 10 + random.nextInt(40), asks.size(), asks, List.of()))));
        }
        return new PlanProblem(List.of(new PlanTrunk("main", stops)), vehicles, 5 * mm,
                List.of(Objective.EXCESS, Objective.COPPER, Objective.LENGTH));
    }
}
