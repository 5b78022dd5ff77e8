// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Arrays;

/** What limits the tucks by ask, for lengths with some tolerances and under a limit of the excess. */
final class AskBounds {

    static final int KINDS = 6;
    static final int REACH_LOW = 0;
    static final int REACH_UP = 1;
    static final int BACK_LOW = 2;
    static final int BACK_UP = 3;
    static final int BEHIND = 4;
    static final int BEFORE = 5;

    final long[] shorter;
    final long[] longer;
    /** By ask, one behind the other, its bounds in the order of the kinds, and their constants. */
    final TuckBound[] bounds;
    final long[] constants;
    private final long limit;

    private AskBounds(SlackRun run, long[] shorter, long[] longer, long limit) {
        this.shorter = shorter;
        this.longer = longer;
        this.limit = limit;
        this.bounds = new TuckBound[KINDS * run.asks.size()];
        for (int i = 0; i < run.asks.size(); i++) {
            SlackRun.Asked asked = run.asks.get(i);
            bounds[KINDS * i + REACH_LOW] = TuckBound.reachLow(run, asked, shorter[asked.leg()]);
            bounds[KINDS * i + REACH_UP] = TuckBound.reachUp(run, asked, shorter[asked.leg()]);
            bounds[KINDS * i + BACK_LOW] = TuckBound.backLow(run, asked);
            bounds[KINDS * i + BACK_UP] = TuckBound.backUp(run, asked);
            bounds[KINDS * i + BEHIND] = TuckBound.behind(run, asked, longer[asked.leg()], limit);
            bounds[KINDS * i + BEFORE] = TuckBound.before(run, asked, longer[asked.leg()], limit);
        }
        this.constants = Arrays.stream(bounds).mapToLong(TuckBound::constant).toArray();
    }

    /**
     * The bounds for lengths in some ranges, which say which tolerances they may have: of these the mildest hold.
     *
     * @param last bounds of the same run that are taken again where nothing has changed; null for none
     */
    static AskBounds of(SlackRun run, long[] low, long[] high, long limit, AskBounds last) {
        long[] shorter = new long[run.legs.size()];
        long[] longer = new long[run.legs.size()];
        for (int i = 0; i < shorter.length; i++) {
            SlackRun.Leg leg = run.legs.get(i);
            shorter[i] = Long.MAX_VALUE;
            longer[i] = Long.MAX_VALUE;
            for (long x = low[leg.unknown()]; x <= high[leg.unknown()]; x++) {
                shorter[i] = Math.min(shorter[i], run.minus(leg, x));
                longer[i] = Math.min(longer[i], run.plus(leg, x));
            }
        }
        return last != null && last.limit == limit && Arrays.equals(last.shorter, shorter)
                && Arrays.equals(last.longer, longer) ? last : new AskBounds(run, shorter, longer, limit);
    }
}
