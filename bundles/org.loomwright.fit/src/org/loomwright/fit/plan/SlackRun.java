// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/**
 * A trunk with slack as integers. Each station and length is an unknown {@code base + grid * x} with whole {@code x} in
 * a range; what is pinned has a range of one. Branches on branches are left out.
 *
 * <p>Tucks lie on a lattice. Where the grid is a multiple of it, what a vehicle asks of a tuck is rounded to it; where
 * not, a lattice step is taken off in what is asked of stations and lengths, so that some harnesses are passed over.
 */
final class SlackRun {

    /**
     * A branch: where it leaves, its unknown, and by the value of the unknown how much shorter and longer than its
     * length it may be made, there and at the least from there on.
     */
    record Leg(PlanBranch branch, int stop, int unknown, long[] minus, long[] plus, long[] leastMinus,
            long[] leastPlus) {
    }

    /** What one vehicle asks of one branch. */
    record Asked(int leg, Ask ask) {
    }

    final long grid;
    final long lattice;
    final boolean aligned;
    final List<PlanStop> stops;
    final List<Leg> legs = new ArrayList<>();
    final List<Asked> asks = new ArrayList<>();
    final int[][] ofVehicle;
    final long[] slack;
    final long[] slackSum;
    /** By branch, the first of its asks among all; one more entry for the end. */
    final int[] firstAsk;
    /** By breakout, its branches of which something is asked. */
    final int[][] legsOf;
    /** By branch, the numbers of its asks among its own, that with the least to spare first. */
    final int[][] bySpare;
    /** By ask: its branch, the vehicle and its figures. */
    final int[] legOf;
    final int[] vehicle;
    final long[] station;
    final long[] reach;
    final long[] spare;
    private final BitSet[] stopsOf;
    final long[] base;
    final long[] low;
    final long[] high;

    SlackRun(PlanTrunk trunk, int vehicles, long grid) {
        this.grid = grid;
        this.lattice = trunk.lattice();
        this.aligned = grid % lattice == 0;
        this.stops = trunk.stops();
        int n = stops.size();
        int count = n + stops.stream().mapToInt(stop -> stop.branches().size()).sum();
        this.slack = stops.stream().mapToLong(stop -> stop.slack() / lattice * lattice).toArray();
        this.slackSum = slack.clone();
        Arrays.parallelPrefix(slackSum, Long::sum);
        this.base = new long[count];
        this.low = new long[count];
        this.high = new long[count];
        Making making = new Making(grid);
        for (int k = 0; k < n; k++) {
            station(k, Stations.farthest(stops, grid) + slackSum[n - 1]);
            for (PlanBranch branch : stops.get(k).branches()) {
                length(branch, k, making);
            }
        }
        tighten();
        this.firstAsk = new int[legs.size() + 1];
        asks.forEach(asked -> firstAsk[asked.leg() + 1]++);
        Arrays.parallelPrefix(firstAsk, Integer::sum);
        this.legsOf = IntStream.range(0, n).mapToObj(k -> IntStream.range(0, legs.size())
                .filter(i -> legs.get(i).stop() == k && firstAsk[i + 1] > firstAsk[i]).toArray()).toArray(int[][]::new);
        this.legOf = asks.stream().mapToInt(Asked::leg).toArray();
        this.vehicle = asks.stream().mapToInt(asked -> asked.ask().vehicle()).toArray();
        this.station = asks.stream().mapToLong(asked -> asked.ask().station()).toArray();
        this.reach = asks.stream().mapToLong(asked -> asked.ask().reach()).toArray();
        this.spare = asks.stream().mapToLong(asked -> asked.ask().spare()).toArray();
        this.bySpare = IntStream.range(0, legs.size()).mapToObj(leg -> IntStream
                .range(0, firstAsk[leg + 1] - firstAsk[leg]).boxed()
                .sorted(Comparator.comparingLong(a -> spare[firstAsk[leg] + a])).mapToInt(a -> a).toArray())
                .toArray(int[][]::new);
        this.stopsOf = IntStream.range(0, vehicles).mapToObj(v -> new BitSet()).toArray(BitSet[]::new);
        asks.forEach(asked -> stopsOf[asked.ask().vehicle()].set(leg(asked).stop()));
        this.ofVehicle = new int[vehicles][];
        for (int v = 0; v < vehicles; v++) {
            int vehicle = v;
            ofVehicle[v] = IntStream.range(0, asks.size())
                    .filter(i -> asks.get(i).ask().vehicle() == vehicle).toArray();
        }
    }

    private void station(int k, long farthest) {
        PlanStop stop = stops.get(k);
        if (stop.first() == stop.last()) {
            base[k] = stop.first();
            return;
        }
        long first = stop.first();
        long last = Math.min(stop.last(), farthest);
        for (PlanBranch branch : stop.branches()) {
            for (Ask ask : branch.asks()) {
                first = Math.max(first, ask.station() - branch.backLimit());
                last = Math.min(last, ask.station() + branch.backLimit() + slackSum[k]);
            }
        }
        low[k] = Math.ceilDiv(first, grid);
        high[k] = Math.floorDiv(last, grid);
    }

    private void length(PlanBranch branch, int k, Making making) {
        int x = stops.size() + legs.size();
        if (branch.pinned().isPresent()) {
            base[x] = branch.pinned().getAsLong();
            high[x] = base[x] > branch.longest() ? -1 : 0;
        } else if (!branch.asks().isEmpty()) {
            long reach = branch.asks().stream().mapToLong(Ask::reach).max().orElse(0);
            long spare = branch.asks().stream().mapToLong(Ask::spare).min().orElse(0);
            low[x] = Math.floorDiv(Math.min(making.least(branch.made(), reach), Long.MAX_VALUE - grid), grid);
            high[x] = Math.floorDiv(Math.min(branch.longest(), branch.excessLimit() + branch.backLimit() + spare),
                    grid);
        }
        long[] minus = new long[(int) Math.max(1, high[x] - low[x] + 1)];
        long[] plus = new long[minus.length];
        for (int i = 0; i < minus.length; i++) {
            Tolerance made = branch.made().of(new Length(base[x] + (low[x] + i) * grid));
            minus[i] = made.minus().nanometres();
            plus[i] = made.plus().nanometres();
        }
        branch.asks().forEach(ask -> asks.add(new Asked(legs.size(), ask)));
        legs.add(new Leg(branch, k, x, minus, plus, least(minus), least(plus)));
    }

    private static long[] least(long[] each) {
        long[] least = each.clone();
        for (int i = least.length - 2; i >= 0; i--) {
            least[i] = Math.min(least[i], least[i + 1]);
        }
        return least;
    }

    /** Takes the spacing into the ranges of the stations. */
    private void tighten() {
        for (int k = 0; k < stops.size(); k++) {
            long before = k == 0 ? 0 : base[k - 1] + grid * low[k - 1];
            long beforeLast = k == 0 ? 0 : base[k - 1] + grid * high[k - 1];
            low[k] = Math.max(low[k], Math.ceilDiv(before + stops.get(k).leastGap() - base[k], grid));
            high[k] = Math.min(high[k], Math.floorDiv(beforeLast + stops.get(k).mostGap() - base[k], grid));
        }
        for (int k = stops.size() - 2; k >= 0; k--) {
            high[k] = Math.min(high[k], Math.floorDiv(base[k + 1] + grid * high[k + 1] - stops.get(k + 1).leastGap()
                    - base[k], grid));
            low[k] = Math.max(low[k], Math.ceilDiv(base[k + 1] + grid * low[k + 1] - stops.get(k + 1).mostGap()
                    - base[k], grid));
        }
    }

    /** True when some unknown has no value left. */
    boolean isEmpty() {
        for (int x = 0; x < low.length; x++) {
            if (low[x] > high[x]) {
                return true;
            }
        }
        return false;
    }

    /** Whether a vehicle asks something of a breakout's branches. */
    boolean isAsked(int vehicle, int stop) {
        return stopsOf[vehicle].get(stop);
    }

    int unknowns() {
        return base.length;
    }

    /** Station or length in nanometres. */
    long value(int unknown, long x) {
        return base[unknown] + grid * x;
    }

    Leg leg(Asked asked) {
        return legs.get(asked.leg());
    }

    /** How much shorter than its length a branch may be made whose unknown has a value within its range. */
    long minus(Leg leg, long x) {
        return leg.minus()[(int) (x - low[leg.unknown()])];
    }

    /** The same for longer. */
    long plus(Leg leg, long x) {
        return leg.plus()[(int) (x - low[leg.unknown()])];
    }

    /** The least that a branch may be made shorter than its length, whatever length from a value on it has. */
    long leastMinus(Leg leg, long x) {
        return leg.leastMinus()[(int) (x - low[leg.unknown()])];
    }

    /** The same for longer. */
    long leastPlus(Leg leg, long x) {
        return leg.leastPlus()[(int) (x - low[leg.unknown()])];
    }

    /** What is added to a lower bound of a tuck, brought to the lattice as it is whatever grid steps come to it. */
    long up(long constant) {
        return aligned ? ceil(constant) : constant + lattice;
    }

    /** What is added to an upper bound of a tuck, the same way. */
    long down(long constant) {
        return aligned ? floor(constant) : constant;
    }

    /** The least tuck that is not below a bound. */
    long ceil(long bound) {
        return Math.ceilDiv(bound, lattice) * lattice;
    }

    /** The greatest tuck that is not above a bound. */
    long floor(long bound) {
        return Math.floorDiv(bound, lattice) * lattice;
    }

    /** The largest excess that is allowed to a branch under a limit for all. */
    static long limit(Leg leg, long limit) {
        return Math.min(limit, leg.branch().excessLimit());
    }
}
