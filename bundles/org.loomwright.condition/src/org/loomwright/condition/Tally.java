// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.math.BigInteger;

/** Numbers of vehicles as people read them, the same in every locale. */
public final class Tally {
    private static final int GROUP = 3;

    private Tally() {
    }

    /** Returns {@code 1 vehicle} or {@code 4,608 vehicles}. */
    public static String vehicles(BigInteger count) {
        return grouped(count) + (count.equals(BigInteger.ONE) ? " vehicle" : " vehicles");
    }

    /** Returns {@code 312 of 4,608 vehicles}, or {@code all 4,608 vehicles} when there are no others. */
    public static String of(BigInteger part, BigInteger whole) {
        if (part.equals(whole) && part.compareTo(BigInteger.ONE) > 0) {
            return "all " + vehicles(whole);
        }
        return grouped(part) + " of " + vehicles(whole);
    }

    private static String grouped(BigInteger count) {
        String digits = count.toString();
        int first = digits.startsWith("-") ? 1 : 0;
        if (digits.length() - first <= GROUP) {
            return digits;
        }
        StringBuilder grouped = new StringBuilder(digits);
        for (int at = digits.length() - GROUP; at > first; at -= GROUP) {
            grouped.insert(at, ',');
        }
        return grouped.toString();
    }
}
