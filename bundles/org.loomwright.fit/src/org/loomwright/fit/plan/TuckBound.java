// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

/**
 * What limits the tuck before a breakout in one vehicle: a constant plus the station plus or minus the length of a
 * branch, or neither.
 *
 * @param stop     the breakout, -1 for the datum, where the tuck is 0
 * @param leg      the branch
 * @param length   how often its length is added: -1, 0 or 1
 * @param constant in nanometres, with what is pinned of station and length
 */
record TuckBound(int stop, int leg, int length, long constant) {

    static final TuckBound DATUM = new TuckBound(-1, -1, 0, 0);

    /** Not more tuck than with which it reaches a place behind it. {@code short} is what a length loses when made. */
    static TuckBound reachUp(SlackRun run, SlackRun.Asked asked, long shorter) {
        return of(run, asked, 1, -shorter - asked.ask().reach(), false);
    }

    /** So much tuck that it reaches a place before it. */
    static TuckBound reachLow(SlackRun run, SlackRun.Asked asked, long shorter) {
        return of(run, asked, -1, shorter + asked.ask().reach(), true);
    }

    static TuckBound backUp(SlackRun run, SlackRun.Asked asked) {
        return of(run, asked, 0, run.leg(asked).branch().backLimit(), false);
    }

    static TuckBound backLow(SlackRun run, SlackRun.Asked asked) {
        return of(run, asked, 0, -run.leg(asked).branch().backLimit(), true);
    }

    /** So little tuck that, behind its station, enough of the branch is used up. {@code longer} is what is gained. */
    static TuckBound behind(SlackRun run, SlackRun.Asked asked, long longer, long limit) {
        return of(run, asked, -1, asked.ask().spare() + SlackRun.limit(run.leg(asked), limit) - longer, false);
    }

    /** So much tuck that, before its station, enough of the branch is used up. */
    static TuckBound before(SlackRun run, SlackRun.Asked asked, long longer, long limit) {
        return of(run, asked, 1, longer - asked.ask().spare() - SlackRun.limit(run.leg(asked), limit), true);
    }

    private static TuckBound of(SlackRun run, SlackRun.Asked asked, int length, long rest, boolean lower) {
        SlackRun.Leg leg = run.leg(asked);
        long constant = run.base[leg.stop()] + length * run.base[leg.unknown()] - asked.ask().station() + rest;
        return new TuckBound(leg.stop(), asked.leg(), length, lower ? run.up(constant) : run.down(constant));
    }

    /** How much more the second of two tucks may be than the first, however they follow each other. */
    static long apart(SlackRun run, TuckBound lower, TuckBound upper) {
        long low = lower.stop < 0 ? 0 : run.slackSum[lower.stop];
        long up = upper.stop < 0 ? 0 : run.slackSum[upper.stop];
        return Math.max(0, low - up);
    }
}
