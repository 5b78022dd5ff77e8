// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.List;
import java.util.Objects;

/**
 * What a written condition means on a platform.
 *
 * @param condition the vehicles; parts with a problem count as if they had not been written
 * @param problems what is wrong with it, in order of the source
 */
public record Resolution(Condition condition, List<Problem> problems) {
    public Resolution {
        Objects.requireNonNull(condition);
        problems = List.copyOf(problems);
    }

    public boolean isGood() {
        return problems.isEmpty();
    }
}
