// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

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
        return new FitDefaults(mm(40), Length.ZERO, mm(250), mm(150), Length.ZERO, mm(5), CutTolerance.a620Metric(),
                CutTolerance.a620Inch(), "common practice");
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }
}
