// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.Objects;

/** A sentence about which vehicles cannot exist. */
public sealed interface Constraint {
    /** {@code never EXPR}: no vehicle is like this. */
    record Never(Expression expression) implements Constraint {
        public Never {
            Objects.requireNonNull(expression);
        }
    }

    /** {@code require THEN when WHEN}: a vehicle like {@code when} is also like {@code then}. */
    record Require(Expression then, Expression when) implements Constraint {
        public Require {
            Objects.requireNonNull(then);
            Objects.requireNonNull(when);
        }
    }
}
