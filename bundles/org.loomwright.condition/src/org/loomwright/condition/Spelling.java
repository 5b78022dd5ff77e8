// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the name that was probably meant by one that does not exist. */
final class Spelling {
    private static final int LONGEST = 60;

    private Spelling() {
    }

    /**
     * Returns the name that takes the fewest slips (a letter wrong, missing, too many, or two swapped; case does not
     * count), at most one in three letters; of equals the first.
     */
    static Optional<String> nearest(String given, Collection<String> names) {
        if (given.length() > LONGEST) {
            return Optional.empty();
        }
        String best = null;
        int fewest = Math.max(1, given.length() / 3) + 1;
        for (String name : names) {
            int slips = Math.abs(name.length() - given.length()) < fewest
                    ? slips(given.toLowerCase(Locale.ROOT), name.toLowerCase(Locale.ROOT))
                    : fewest;
            if (slips < fewest) {
                fewest = slips;
                best = name;
            }
        }
        return Optional.ofNullable(best);
    }

    /** Returns the number of slips, by the rows of the usual table; two swapped letters count once. */
    private static int slips(String given, String name) {
        int[] before = new int[name.length() + 1];
        int[] last = new int[name.length() + 1];
        for (int j = 0; j <= name.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= given.length(); i++) {
            int[] row = new int[name.length() + 1];
            row[0] = i;
            for (int j = 1; j <= name.length(); j++) {
                int same = given.charAt(i - 1) == name.charAt(j - 1) ? 0 : 1;
                row[j] = Math.min(last[j - 1] + same, Math.min(last[j], row[j - 1]) + 1);
                if (i > 1 && j > 1 && given.charAt(i - 1) == name.charAt(j - 2)
                        && given.charAt(i - 2) == name.charAt(j - 1)) {
                    row[j] = Math.min(row[j], before[j - 2] + 1);
                }
            }
            before = last;
            last = row;
        }
        return last[name.length()];
    }
}
