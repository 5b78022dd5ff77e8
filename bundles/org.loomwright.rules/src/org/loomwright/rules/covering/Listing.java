// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import java.util.Collection;
import java.util.List;

/** Lists names for people. */
final class Listing {

    private static final int MOST = 4;

    private Listing() {
    }

    /** {@code a, b, c, d and 3 more}; each name once. */
    static String of(Collection<String> names) {
        List<String> distinct = names.stream().distinct().toList();
        if (distinct.size() <= MOST + 1) {
            return String.join(", ", distinct);
        }
        return String.join(", ", distinct.subList(0, MOST)) + " and " + (distinct.size() - MOST) + " more";
    }
}
