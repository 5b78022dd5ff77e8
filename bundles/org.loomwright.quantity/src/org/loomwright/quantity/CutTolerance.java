// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.util.List;

/**
 * A table of default length tolerances by length, used where a drawing states none. A length on a boundary belongs to
 * the band below it. Above the last band the plus side is a share of the length.
 *
 * @param bands bands in order of rising length, at least one
 * @param percentAbove plus tolerance above the last band, in percent of the length; minus is zero there
 * @param basis where the figures come from, for people
 */
public record CutTolerance(List<Band> bands, int percentAbove, String basis) {
    /**
     * One band of the table.
     *
     * @param upTo the greatest length in the band
     * @param tolerance what holds in it
     */
    public record Band(Length upTo, Tolerance tolerance) {
    }

    public CutTolerance {
        bands = List.copyOf(bands);
        if (bands.isEmpty() || percentAbove < 0) {
            throw new IllegalArgumentException("a tolerance table has a band and no negative share");
        }
        for (int i = 1; i < bands.size(); i++) {
            if (bands.get(i).upTo().compareTo(bands.get(i - 1).upTo()) <= 0) {
                throw new IllegalArgumentException("the bands of a tolerance table rise");
            }
        }
    }

    /**
     * The default: overall length of a finished harness after IPC/WHMA-A-620 in its metric form, -0/+25 mm to 0.3 m,
     * +50 mm to 1.5 m, +100 mm to 3 m, +150 mm to 7.5 m, +5 % above. The metric equivalents are from memory.
     */
    public static CutTolerance a620Metric() {
        return new CutTolerance(
                List.of(band(300, 25), band(1_500, 50), band(3_000, 100), band(7_500, 150)),
                5,
                "IPC/WHMA-A-620 default length tolerance, metric equivalents from memory");
    }

    /**
     * The same table as the standard states it in inches: -0/+1 in to 1 ft, +2 in to 5 ft, +4 in to 10 ft, +6 in to
     * 25 ft, +5 % above.
     */
    public static CutTolerance a620Inch() {
        double inch = 25.4;
        return new CutTolerance(
                List.of(
                        band(12 * inch, inch),
                        band(60 * inch, 2 * inch),
                        band(120 * inch, 4 * inch),
                        band(300 * inch, 6 * inch)),
                5,
                "IPC/WHMA-A-620 default length tolerance");
    }

    private static Band band(double upToMillimetres, double plusMillimetres) {
        Tolerance tolerance = new Tolerance(Length.ZERO, Length.ofMillimetres(plusMillimetres));
        return new Band(Length.ofMillimetres(upToMillimetres), tolerance);
    }

    /** Returns the tolerance of a length; a negative length has that of its absolute value. */
    public Tolerance of(Length length) {
        Length size = length.abs();
        for (Band band : bands) {
            if (size.compareTo(band.upTo()) <= 0) {
                return band.tolerance();
            }
        }
        return new Tolerance(Length.ZERO, Length.ofMillimetres(size.toMillimetres() * percentAbove / 100));
    }
}
