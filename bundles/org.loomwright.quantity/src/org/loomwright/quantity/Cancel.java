// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

/** The question that a long computation asks now and then: shall I stop? Answers may come from another thread. */
@FunctionalInterface
public interface Cancel {
    /** A computation that nobody stops. */
    Cancel NEVER = () -> false;

    /** Returns whether the computation should stop; cheap, and true for ever once it was true. */
    boolean cancelled();

    /** Throws {@link Cancelled} if the computation should stop. */
    default void check() {
        if (cancelled()) {
            throw new Cancelled();
        }
    }
}
