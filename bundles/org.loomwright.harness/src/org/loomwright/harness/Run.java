// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.quantity.Quantity;

/**
 * A trunk, which starts at the datum, or a branch, which starts at a breakout or at the datum. Trunks that run both
 * ways from the datum are two trunks.
 *
 * @param kind      trunk or branch
 * @param name      its name
 * @param from      for a branch: the breakout that it leaves, or the datum's place; empty for a trunk
 * @param to        for a branch: the place that it serves; for a trunk: empty
 * @param length    for a branch: from its breakout to its end; empty when not stated. A trunk ends at its last breakout
 * @param breakouts the breakouts on it, in order along the run
 * @param barriers  grommets, holes and hinges that a breakout may not cross
 * @param slacks    how much of the run before a breakout may be taken up
 * @param bends     where the run turns sharply on its way through the vehicle
 * @param when      the vehicles that have it
 * @param span      the whole element
 */
public record Run(Kind kind, Name name, Optional<Ref> from, Optional<Ref> to, Optional<Measure> length,
        List<Breakout> breakouts, List<Barrier> barriers, List<Slack> slacks, List<Bend> bends,
        Expression when, Span span) {

    /** Trunk or branch. */
    public enum Kind {
        TRUNK, BRANCH
    }

    /**
     * Where a branch leaves the run.
     *
     * @param name  its name
     * @param after the breakout that the station is counted from; empty when it is counted from the start of the run
     * @param at    the station, or the distance from {@code after}
     */
    public record Breakout(Name name, Optional<Ref> after, Measure at, Expression when, Span span) {
    }

    /** A grommet, hole or hinge at a station. */
    public record Barrier(Name name, Measure at, Span span) {
    }

    /** Slack that may be taken up in the stretch that ends at a breakout. */
    public record Slack(Ref before, Quantity atMost, Span span) {
    }

    /**
     * A bend on the way through the vehicle.
     *
     * @param at     its station
     * @param radius inside of the bend
     */
    public record Bend(Name name, Measure at, Quantity radius, Expression when, Span span) {
    }
}
