// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

/**
 * The smallest circle that holds n equal circles, as a multiple of their diameter, for n up to 20.
 *
 * <p>Proven optima: n to 7 and 19 (Graham 1968, Fodor 1999), 8 to 10 (Pirl 1969), 11 (Melissen 1994), 12 and 13 (Fodor
 * 2000, 2003), 14 (Ekanayake and LaFountain 2024). The others are the best known packings and conjectured to be
 * optimal. Closed forms are computed; for 10, 12, 14, 16, 17 and 20 there is none as short: these are the figures of
 * Specht's table as Birgin and Gentil reprint it (2009, table 1), with all digits that they give.
 */
final class EqualCircles {

    /** The greatest number in the table. */
    static final int MOST = 20;

    private EqualCircles() {
    }

    /** Ratio of the diameters for the best packing that is known. */
    static double known(int n) {
        return switch (n) {
            case 1 -> 1;
            case 2 -> 2;
            case 3 -> 1 + 2 / Math.sqrt(3);
            case 4 -> 1 + Math.sqrt(2);
            case 5 -> 1 + Math.sqrt(2 * (1 + 1 / Math.sqrt(5)));
            case 6, 7 -> 3;
            case 8 -> 1 + 1 / Math.sin(Math.PI / 7);
            case 9 -> 1 + Math.sqrt(2 * (2 + Math.sqrt(2)));
            case 10 -> 3.813_025_631_398_124_6;
            case 11 -> 1 + 1 / Math.sin(Math.PI / 9);
            case 12 -> 4.029_601_930_116_183_6;
            case 13 -> 2 + Math.sqrt(5);
            case 14 -> 4.328_428_554_860_837_0;
            case 15 -> 1 + Math.sqrt(6 + 2 / Math.sqrt(5) + 4 * Math.sqrt(1 + 2 / Math.sqrt(5)));
            case 16 -> 4.615_425_594_873_194_4;
            case 17 -> 4.792_033_748_310_578_8;
            case 18, 19 -> 1 + Math.sqrt(2) + Math.sqrt(6);
            case 20 -> 5.122_320_736_991_528_5;
            default -> throw new IllegalArgumentException("no packing of " + n + " circles in the table");
        };
    }

    /** True when the best known packing is proven to be optimal. */
    static boolean isProven(int n) {
        return n <= 14 || n == 19;
    }

    /** A ratio that no packing of n equal circles undercuts: that of the largest proven number up to n. */
    static double bound(int n) {
        int proven = n;
        while (!isProven(proven)) {
            proven--;
        }
        return known(proven);
    }
}
