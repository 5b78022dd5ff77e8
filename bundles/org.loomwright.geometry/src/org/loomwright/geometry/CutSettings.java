// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.Optional;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Measure.MeasuredTo;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.CutTolerance;
import org.loomwright.quantity.Length;

/**
 * What a cut length takes besides the route. All defaults are common practice; a harness sets its own grid with
 * {@code cuttingGrid}, and a terminal or splice method of the catalogue states its own allowance as {@code length}.
 *
 * @param housing   from the back of a housing to the wire's end in the terminal, strip included, for a branch whose
 *                  length is measured to the housing or does not say
 * @param face      the same for a branch measured to the mating face; the wire ends before it, so nothing is added
 * @param tip       the same for a branch measured to the tip of the terminal
 * @param splice    what a wire needs beyond the middle of a splice
 * @param stud      from the end of a branch at a ground stud to the wire's end in the ring
 * @param device    from the end of a branch at an in-line device to the wire's end in its terminal
 * @param shortfall how much shorter than set the cutting machine may cut; added, so that no wire comes out too short
 * @param grid      cut lengths are multiples of it
 * @param tolerance length tolerance of the finished wire
 * @param basis     where the figures come from, for people
 */
public record CutSettings(Length housing, Length face, Length tip, Length splice, Length stud, Length device,
        Length shortfall, Length grid, CutTolerance tolerance, String basis) {

    public CutSettings {
        if (grid.compareTo(Length.ZERO) <= 0) {
            throw new IllegalArgumentException("a cutting grid is longer than nothing");
        }
    }

    /** The defaults: 15 mm at a housing and a device, 10 mm at a splice and a stud, 2 mm shortfall, 5 mm grid. */
    public static CutSettings usual() {
        Limits usual = Limits.usual();
        return new CutSettings(usual.length(Limit.HOUSING_ALLOWANCE), Length.ZERO, Length.ZERO,
                usual.length(Limit.SPLICE_ALLOWANCE), usual.length(Limit.STUD_ALLOWANCE),
                usual.length(Limit.DEVICE_ALLOWANCE), usual.length(Limit.CUT_SHORTFALL),
                usual.length(Limit.CUTTING_GRID), CutTolerance.a620Metric(), "common practice");
    }

    /** These settings, but for those that the practice of a project sets. */
    private CutSettings with(Limits limits) {
        return new CutSettings(own(limits, Limit.HOUSING_ALLOWANCE, housing), face, tip,
                own(limits, Limit.SPLICE_ALLOWANCE, splice), own(limits, Limit.STUD_ALLOWANCE, stud),
                own(limits, Limit.DEVICE_ALLOWANCE, device), own(limits, Limit.CUT_SHORTFALL, shortfall),
                own(limits, Limit.CUTTING_GRID, grid), tolerance, basis);
    }

    private static Length own(Limits limits, Limit limit, Length otherwise) {
        return limits.set().containsKey(limit) ? limits.length(limit) : otherwise;
    }

    /**
     * The settings for a drawing or harness: what the practice of its platform sets goes before these, and the grid
     * that the harness itself states for all its places before both.
     */
    public CutSettings of(WiringView view) {
        return with(view.platform().limits()).of(view.wiring());
    }

    private CutSettings of(Wiring wiring) {
        Optional<Length> own = wiring.ours().settings().stream()
                .filter(each -> each.kind() == Ours.SettingKind.GRID && each.place().isEmpty())
                .flatMap(each -> each.value().stream()).flatMap(each -> Distance.usable(each).stream())
                .filter(each -> !each.isZero()).reduce((first, second) -> second);
        return new CutSettings(housing, face, tip, splice, stud, device, shortfall, own.orElse(grid), tolerance, basis);
    }

    /** What a cavity adds to the length of a branch that is measured to one of these. */
    public Length cavity(MeasuredTo end) {
        return switch (end) {
            case FACE -> face;
            case TIP -> tip;
            case HOUSING, UNSTATED -> housing;
        };
    }
}
