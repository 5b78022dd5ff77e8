// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.List;

/** Whether things are the very same objects, which says at once that nothing changed in them. */
final class Identity {

    private Identity() {
    }

    /** Returns whether two lists have the same objects, not only equal ones, in the same order. */
    static boolean same(List<?> some, List<?> others) {
        if (some.size() != others.size()) {
            return false;
        }
        for (int i = 0; i < some.size(); i++) {
            if (some.get(i) != others.get(i)) {
                return false;
            }
        }
        return true;
    }
}
