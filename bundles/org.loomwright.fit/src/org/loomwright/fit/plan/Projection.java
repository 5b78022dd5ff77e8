// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What reach and doubling back of all vehicles ask of stations and lengths alone: tucks are eliminated. Along the chain
 * of one vehicle that is possible exactly when each lower bound of a tuck is at most each upper bound and the slack
 * between them. Factors do not depend on the vehicle, so only the vehicle with the least room counts: as many
 * inequalities as pairs of branches, however many vehicles.
 */
final class Projection {

    private static final long NONE = Long.MAX_VALUE;
    private static final int KINDS = 2;

    private final SlackRun run;
    private final TuckBound[] lower;
    private final TuckBound[] upper;
    private final long[][] room;

    /**
     * Puts it together; O(vehicles * branches²).
     *
     * @param shorter by branch, how much shorter than its length it may be made at most
     */
    Projection(SlackRun run, long[] shorter) {
        this.run = run;
        int count = KINDS * run.legs.size() + 1;
        this.lower = new TuckBound[count];
        this.upper = new TuckBound[count];
        this.room = new long[count][count];
        Arrays.stream(room).forEach(row -> Arrays.fill(row, NONE));
        lower[count - 1] = TuckBound.DATUM;
        upper[count - 1] = TuckBound.DATUM;
        for (int[] asks : run.ofVehicle) {
            vehicle(asks, shorter);
        }
    }

    private void vehicle(int[] asks, long[] shorter) {
        int size = KINDS * asks.length + 1;
        TuckBound[] low = new TuckBound[size];
        TuckBound[] up = new TuckBound[size];
        int[] kind = new int[size];
        for (int i = 0; i < asks.length; i++) {
            SlackRun.Asked asked = run.asks.get(asks[i]);
            low[KINDS * i] = TuckBound.reachLow(run, asked, shorter[asked.leg()]);
            up[KINDS * i] = TuckBound.reachUp(run, asked, shorter[asked.leg()]);
            low[KINDS * i + 1] = TuckBound.backLow(run, asked);
            up[KINDS * i + 1] = TuckBound.backUp(run, asked);
            kind[KINDS * i] = KINDS * asked.leg();
            kind[KINDS * i + 1] = KINDS * asked.leg() + 1;
        }
        low[size - 1] = TuckBound.DATUM;
        up[size - 1] = TuckBound.DATUM;
        kind[size - 1] = lower.length - 1;
        for (int i = 0; i < size; i++) {
            lower[kind[i]] = low[i];
            upper[kind[i]] = up[i];
            for (int j = 0; j < size; j++) {
                room[kind[i]][kind[j]] = Math.min(room[kind[i]][kind[j]],
                        up[j].constant() - low[i].constant() + TuckBound.apart(run, low[i], up[j]));
            }
        }
    }

    private static double free(SlackRun run, TuckBound bound, double[] x) {
        return bound.stop() < 0 ? 0
                : x[bound.stop()] + bound.length() * x[run.legs.get(bound.leg()).unknown()];
    }

    /** The inequalities that some figures break by more than a little: for each bound that which is broken most. */
    List<Row> broken(double[] x, double little) {
        int count = lower.length;
        double[] low = new double[count];
        double[] up = new double[count];
        for (int i = 0; i < count; i++) {
            low[i] = lower[i] == null ? 0 : free(run, lower[i], x);
            up[i] = upper[i] == null ? 0 : free(run, upper[i], x);
        }
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int worst = -1;
            double most = little;
            for (int j = 0; j < count; j++) {
                if (room[i][j] != NONE) {
                    double over = low[i] - up[j] - Math.floorDiv(room[i][j], run.grid);
                    if (over > most) {
                        most = over;
                        worst = j;
                    }
                }
            }
            if (worst >= 0) {
                rows.add(Row.of(run, lower[i], upper[worst], room[i][worst], false));
            }
        }
        return rows;
    }
}
