// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import java.util.Map;

/**
 * All files of two sides, by name. What is compared is one of them; the others give its names their meaning.
 *
 * @param old   files of the left side
 * @param now   files of the right side
 * @param title words for both
 */
public record Sides(Map<String, byte[]> old, Map<String, byte[]> now, String title) {

    /** Key under which the sides are handed on with the settings of a comparison. */
    public static final String KEY = "org.loomwright.workbench.sides";

    public Sides {
        old = Map.copyOf(old);
        now = Map.copyOf(now);
    }
}
