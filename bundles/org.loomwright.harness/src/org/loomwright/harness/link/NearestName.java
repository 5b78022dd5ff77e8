// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/**
 * Finds the name that a misspelt one was probably meant to be. A name is near when at most a third of its letters,
 * and at most three, would have to be inserted, left out, replaced or exchanged with the next one.
 */
final class NearestName {

    private NearestName() {
    }

    /** The nearest of some names, the first in alphabetical order of several; empty when none is near. */
    static Optional<String> of(String wrong, Collection<String> names) {
        String best = null;
        int least = Math.min(3, Math.max(1, wrong.length() / 3)) + 1;
        for (String name : names) {
            if (Math.abs(name.length() - wrong.length()) >= least && best == null) {
                continue;
            }
            int distance = distance(wrong.toLowerCase(Locale.ROOT), name.toLowerCase(Locale.ROOT));
            if (distance < least || distance == least && best != null && name.compareTo(best) < 0) {
                least = distance;
                best = name;
            }
        }
        return Optional.ofNullable(best);
    }

    private static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            d[i][0] = i;
        }
        for (int j = 0; j <= b.length(); j++) {
            d[0][j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                int replace = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                d[i][j] = Math.min(replace, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
