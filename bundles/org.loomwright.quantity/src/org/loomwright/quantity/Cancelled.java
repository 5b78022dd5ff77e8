// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

/** Ends a computation that was cancelled. Carries no stack trace, since it is no fault. */
public final class Cancelled extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public Cancelled() {
        super("cancelled", null, false, false);
    }
}
