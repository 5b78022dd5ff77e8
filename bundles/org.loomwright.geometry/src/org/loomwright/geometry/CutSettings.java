// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.Optional;
import org.loomwright.harness.Measure.MeasuredTo;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Wiring;
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
        return new CutSettings(mm(15), Length.ZERO, Length.ZERO, mm(10), mm(10), mm(15), mm(2), mm(5),
                CutTolerance.a620Metric(), "common practice");
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }

    /** These settings with the grid of a harness, where it states one for all its places. */
    public CutSettings of(Wiring wiring) {
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
