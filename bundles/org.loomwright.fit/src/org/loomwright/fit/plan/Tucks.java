// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Arrays;

/**
 * What is known of the tucks. That of a vehicle before a breakout stands at the breakout times the vehicles, and the
 * vehicle.
 *
 * @param low  the least that is taken up before it
 * @param high the most
 */
record Tucks(long[] low, long[] high) {

    /** All that a run allows. */
    static Tucks of(SlackRun run) {
        int vehicles = run.ofVehicle.length;
        long[] high = new long[run.stops.size() * vehicles];
        for (int k = 0; k < run.stops.size(); k++) {
            Arrays.fill(high, k * vehicles, (k + 1) * vehicles, run.slackSum[k]);
        }
        return new Tucks(new long[high.length], high);
    }

    Tucks copy() {
        return new Tucks(low.clone(), high.clone());
    }
}
