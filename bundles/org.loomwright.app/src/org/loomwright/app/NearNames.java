// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.Collection;
import java.util.List;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.quantity.Spelling;

/** What a caller may have meant by a name that nothing has. */
public final class NearNames {

    private static final int MOST = 8;

    private NearNames() {
    }

    /**
     * {@code ; did you mean 'front64'?}, else the names that there are, else some other words.
     *
     * @param none words for when there is no name at all
     */
    public static String or(String wrong, Collection<String> names, String none) {
        if (names.isEmpty()) {
            return none;
        }
        List<String> sorted = names.stream().sorted(new NaturalOrder()).toList();
        String all = String.join(", ", sorted.subList(0, Math.min(MOST, sorted.size())))
                + (sorted.size() > MOST ? " and " + (sorted.size() - MOST) + " more" : "");
        return Spelling.nearest(wrong, names).map(near -> "; did you mean '" + near + "'?")
                .orElse("; there is " + all);
    }
}
