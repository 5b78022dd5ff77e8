// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Arrays;

/** What limits the tucks by ask, for lengths with some tolerances and under a limit of the excess. */
final class AskBounds {

    final long[] shorter;
    final long[] longer;
    final TuckBound[] reachLow;
    final TuckBound[] reachUp;
    final TuckBound[] backLow;
    final TuckBound[] backUp;
    final TuckBound[] behind;
    final TuckBound[] before;
    private final long limit;

    private AskBounds(SlackRun run, long[] shorter, long[] longer, long limit) {
        int count = run.asks.size();
        this.shorter = shorter;
        this.longer = longer;
        this.limit = limit;
        this.reachLow = new TuckBound[count];
        this.reachUp = new TuckBound[count];
        this.backLow = new TuckBound[count];
        this.backUp = new TuckBound[count];
        this.behind = new TuckBound[count];
        this.before = new TuckBound[count];
        for (int i = 0; i < count; i++) {
            SlackRun.Asked asked = run.asks.get(i);
            reachLow[i] = TuckBound.reachLow(run, asked, shorter[asked.leg()]);
            reachUp[i] = TuckBound.reachUp(run, asked, shorter[asked.leg()]);
            backLow[i] = TuckBound.backLow(run, asked);
            backUp[i] = TuckBound.backUp(run, asked);
            behind[i] = TuckBound.behind(run, asked, longer[asked.leg()], limit);
            before[i] = TuckBound.before(run, asked, longer[asked.leg()], limit);
        }
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
                shorter[i] = Math.min(shorter[i], run.made(leg, x).minus().nanometres());
                longer[i] = Math.min(longer[i], run.made(leg, x).plus().nanometres());
            }
        }
        return last != null && last.limit == limit && Arrays.equals(last.shorter, shorter)
                && Arrays.equals(last.longer, longer) ? last : new AskBounds(run, shorter, longer, limit);
    }
}
