// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import org.loomwright.harness.Measure.Provenance;
import org.loomwright.harness.Span;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Tolerance;

/**
 * What one branch of a drawing asks of one branch of the harness.
 *
 * @param place           the place that the branch goes to in the vehicles
 * @param factoryBranch   the drawing's branch; empty when the place is the drawing's datum
 * @param trunk           the harness's trunk; empty for a branch that hangs on the datum
 * @param stop            the breakout on that trunk, with which the branch moves when slack is taken up; empty for the
 *                        datum
 * @param way             the run along the vehicle's trunk, by the position of that breakout
 * @param made            length of the harness's branch
 * @param madeTolerance   how far it may be made shorter and longer
 * @param factory         length from where the factory's branch leaves the trunk to its end
 * @param extra           what the end needs besides: service loop and movement where the factory's length is a path
 * @param reachAllowance  what tolerances of breakout, stations and factory branch may take from the reach
 * @param excessAllowance what they may add to the excess
 * @param excessLimit     the longest excess
 * @param backLimit       the longest run along the trunk
 * @param provenance      the worst of the drawing's lengths in it
 * @param harnessSpan     the harness's branch
 * @param factorySpan     the drawing's branch
 * @param endsDiffer      true when the two branches are measured to different ends and both say so
 */
public record Demand(String place, String factoryBranch, String trunk, String stop, Way way, Length made,
        Tolerance madeTolerance, Length factory, Length extra, Length reachAllowance, Length excessAllowance,
        Length excessLimit, Length backLimit, Provenance provenance, Span harnessSpan, Span factorySpan,
        boolean endsDiffer) {

    /** c - tm - |x - s| - K - a in nanometres: what is left of the shortest branch; negative when it does not reach. */
    long margin(long position) {
        return made.minus(madeTolerance.minus()).minus(factory).minus(extra).minus(reachAllowance).nanometres()
                - way.along(position);
    }

    /** c + tp - |x - s| - K + a in nanometres: what may have to be dressed back of the longest branch. */
    long excess(long position) {
        return made.plus(madeTolerance.plus()).minus(factory).minus(extra).plus(excessAllowance).nanometres()
                - way.along(position);
    }

    /** How far the excess goes past its limit, in nanometres. */
    long over(long position) {
        return excess(position) - excessLimit.nanometres();
    }

    /** How far the run along the trunk goes past its limit, in nanometres. */
    long back(long position) {
        return way.along(position) - backLimit.nanometres();
    }
}
