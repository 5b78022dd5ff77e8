// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.loomwright.quantity.CutTolerance;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/** What a branch says of tucks and sides, against a list of all stations, lengths and tucks. */
class BranchViewTest {

    private static final int CASES = 3_000;
    private static final long GRID = 5;
    private static final long NONE = Long.MAX_VALUE;

    /** A branch of some vehicles on a trunk where up to 60 units are taken up before it; a random part of it. */
    private static final class Case {

        private final SlackRun run;
        private final long limit;
        private final byte[] sides;
        private final Tucks tucks;

        private Case(int seed, boolean oneTolerance) {
            Random random = new Random(seed);
            int vehicles = 1 + random.nextInt(5);
            List<Ask> asks = new ArrayList<>();
            for (int v = 0; v < vehicles; v++) {
                long reach = 40 + random.nextInt(40);
                asks.add(new Ask(v, 90 + random.nextInt(50), reach, reach - random.nextInt(12)));
            }
            CutTolerance made = oneTolerance ? Instances.constant(random.nextInt(3), random.nextInt(6))
                    : new CutTolerance(List.of(band(70, random), band(95, random), band(NONE, random)), 0, "test");
            PlanBranch branch = new PlanBranch("b", made, OptionalLong.empty(), 200, 30 + random.nextInt(60), 1_000, 1,
                    vehicles, asks, List.of());
            this.run = new SlackRun(new PlanTrunk("main", List.of(new PlanStop("t", 0, 1_000, 60, 1_000,
                    random.nextInt(61), 1, List.of(branch))), 1), vehicles, GRID);
            this.limit = 10 + random.nextInt(60);
            this.sides = new byte[vehicles];
            this.tucks = Tucks.of(run);
            for (int v = 0; v < vehicles; v++) {
                sides[v] = (byte) (random.nextInt(4) == 0 ? 1 : random.nextInt(3) == 0 ? -1 : 0);
                tucks.low()[v] = random.nextLong(run.slackSum[0] + 1);
                tucks.high()[v] = random.nextLong(tucks.low()[v], run.slackSum[0] + 1);
            }
        }

        private static CutTolerance.Band band(long upTo, Random random) {
            return new CutTolerance.Band(new Length(upTo), new Tolerance(new Length(random.nextInt(3)),
                    new Length(random.nextInt(6))));
        }

        private BranchView view() {
            return new BranchView(run, 0, limit, run.low, run.high, sides, tucks);
        }

        /** The lengths with which each vehicle has a tuck from a station, as the mildest tolerances would allow. */
        private List<Long> lengths(long at) {
            List<Long> lengths = new ArrayList<>();
            for (long c = run.low[1]; c <= run.high[1]; c++) {
                boolean all = true;
                for (int v = 0; v < sides.length && all; v++) {
                    all = false;
                    for (long tuck = tucks.low()[v]; tuck <= tucks.high()[v] && !all; tuck++) {
                        all = isServed(v, at, c, tuck, true) || isServed(v, at, c, tuck, false);
                    }
                }
                if (all) {
                    lengths.add(c);
                }
            }
            return lengths;
        }

        /** Whether a vehicle is served with a tuck, with our breakout behind its own or before it, so far as chosen. */
        private boolean isServed(int v, long at, long c, long tuck, boolean behind) {
            SlackRun.Leg leg = run.legs.getFirst();
            long used = run.value(1, c) + run.plus(leg, c) - run.spare[v] - limit;
            long own = at - tuck - run.station[v];
            boolean reaches = Math.abs(own) <= Math.min(leg.branch().backLimit(),
                    run.value(1, c) - run.minus(leg, c) - run.reach[v]);
            return reaches && (used <= 0 && sides[v] == 0
                    || (behind ? sides[v] >= 0 && own >= used : sides[v] <= 0 && -own >= used));
        }

        /** Whether a vehicle reaches with the longest of some lengths, and uses up enough with the shortest. */
        private boolean isServed(int v, long at, long shortest, long longest, long tuck, int side) {
            SlackRun.Leg leg = run.legs.getFirst();
            long used = run.value(1, shortest) + run.plus(leg, shortest) - run.spare[v] - limit;
            long own = at - tuck - run.station[v];
            boolean reaches = Math.abs(own) <= Math.min(leg.branch().backLimit(),
                    run.value(1, longest) - run.minus(leg, longest) - run.reach[v]);
            return reaches && (used <= 0 || side * own >= used && side * sides[v] >= 0);
        }
    }

    @Test
    void agreesWithAListOfAllTucks() {
        int narrowed = 0;
        int decided = 0;
        for (int seed = 0; seed < CASES; seed++) {
            Case each = new Case(seed, true);
            if (each.run.isEmpty()) {
                continue;
            }
            BranchView view = each.view();
            int vehicles = each.sides.length;
            long[] from = new long[vehicles];
            long[] to = new long[vehicles];
            boolean[][] can = new boolean[vehicles][2];
            Arrays.fill(from, NONE);
            Arrays.fill(to, -1);
            boolean any = false;
            for (int t = 0; t <= each.run.high[0] - each.run.low[0]; t++) {
                long at = each.run.value(0, each.run.low[0] + t);
                List<Long> lengths = each.lengths(at);
                assertEquals(!lengths.isEmpty(), view.look(t) && view.isPossible(), "seed " + seed + " at " + at);
                if (lengths.isEmpty()) {
                    continue;
                }
                any = true;
                view.keep(t);
                for (int v = 0; v < vehicles; v++) {
                    for (int side = -1; side <= 1; side += 2) {
                        for (long tuck = each.tucks.low()[v]; tuck <= each.tucks.high()[v]; tuck++) {
                            if (each.isServed(v, at, lengths.getFirst(), lengths.getLast(), tuck, side)) {
                                from[v] = Math.min(from[v], tuck);
                                to[v] = Math.max(to[v], tuck);
                                can[v][(side + 1) / 2] = true;
                            }
                        }
                    }
                }
            }
            for (int v = 0; any && v < vehicles; v++) {
                String where = "seed " + seed + " vehicle " + v;
                assertEquals(from[v], view.tuckFrom(v), where);
                assertEquals(to[v], view.tuckTo(v), where);
                byte side = each.sides[v] != 0 || can[v][0] == can[v][1] ? each.sides[v] : (byte) (can[v][1] ? 1 : -1);
                assertEquals(side, view.side(v), where);
                narrowed += from[v] > each.tucks.low()[v] || to[v] < each.tucks.high()[v] ? 1 : 0;
                decided += side != each.sides[v] ? 1 : 0;
            }
        }
        assertTrue(narrowed > CASES / 10 && decided > CASES / 10, narrowed + " narrowed, " + decided + " decided");
    }

    @Test
    void losesNoTuckWhereLengthsHaveSeveralTolerances() {
        int served = 0;
        for (int seed = 0; seed < CASES; seed++) {
            Case each = new Case(seed, false);
            if (each.run.isEmpty()) {
                continue;
            }
            BranchView view = each.view();
            List<Long> stations = new ArrayList<>();
            for (int t = 0; t <= each.run.high[0] - each.run.low[0]; t++) {
                long at = each.run.value(0, each.run.low[0] + t);
                boolean possible = view.look(t) && view.isPossible();
                if (!each.lengths(at).isEmpty()) {
                    assertTrue(possible, "seed " + seed + " at " + at);
                    stations.add(at);
                }
                if (possible) {
                    view.keep(t);
                }
            }
            for (long at : stations) {
                for (long c : each.lengths(at)) {
                    assertTrue(view.shortest() <= c && c <= view.longest(), "seed " + seed + " length " + c);
                    for (int v = 0; v < each.sides.length; v++) {
                        for (long tuck = each.tucks.low()[v]; tuck <= each.tucks.high()[v]; tuck++) {
                            for (boolean behind : new boolean[] {false, true}) {
                                if (each.isServed(v, at, c, tuck, behind)) {
                                    assertTrue(view.tuckFrom(v) <= tuck && tuck <= view.tuckTo(v), "seed " + seed);
                                    served++;
                                }
                            }
                        }
                    }
                }
            }
        }
        assertTrue(served > CASES, served + " served");
    }
}
