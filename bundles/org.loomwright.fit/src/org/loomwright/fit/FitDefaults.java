// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.quantity.CutTolerance;
import org.loomwright.quantity.Length;

/**
 * What holds for a harness that does not say otherwise.
 *
 * @param serviceLoop       spare length needed to plug in and re-terminate, where a drawing gives the length of the
 *                          path
 * @param movement          what the branch must follow besides, of an engine or a hinge
 * @param excess            the longest length that an installer may have to dress back
 * @param doublingBack      how far a branch may run back along the trunk
 * @param spacing           least distance between two breakouts
 * @param breakoutTolerance how far a breakout may be made from its station, either way
 * @param branchMetric      tolerance of a branch as made, where its length is written in metric units
 * @param branchInch        the same where its length is written in inches or feet
 * @param basis             where the figures come from, for people
 */
public record FitDefaults(Length serviceLoop, Length movement, Length excess, Length doublingBack, Length spacing,
        Length breakoutTolerance, CutTolerance branchMetric, CutTolerance branchInch, String basis) {

    /**
     * Service loop 40 mm, movement none, excess 250 mm, doubling back 150 mm, no least spacing, breakouts ± 5 mm:
     * common practice. Branches after IPC/WHMA-A-620.
     */
    public static FitDefaults usual() {
        Limits usual = Limits.usual();
        return new FitDefaults(usual.length(Limit.SERVICE_LOOP), usual.length(Limit.MOVEMENT),
                usual.length(Limit.EXCESS), usual.length(Limit.DOUBLING_BACK), usual.length(Limit.SPACING),
                usual.length(Limit.BREAKOUTS_MADE), CutTolerance.a620Metric(), CutTolerance.a620Inch(),
                "common practice");
    }

    /** These defaults, but for those that the practice of a project sets. */
    public FitDefaults with(Limits limits) {
        return new FitDefaults(own(limits, Limit.SERVICE_LOOP, serviceLoop), own(limits, Limit.MOVEMENT, movement),
                own(limits, Limit.EXCESS, excess), own(limits, Limit.DOUBLING_BACK, doublingBack),
                own(limits, Limit.SPACING, spacing), own(limits, Limit.BREAKOUTS_MADE, breakoutTolerance), branchMetric,
                branchInch, basis);
    }

    private static Length own(Limits limits, Limit limit, Length otherwise) {
        return limits.set().containsKey(limit) ? limits.length(limit) : otherwise;
    }
}
