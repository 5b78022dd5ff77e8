// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

/** What a call ends with. */
final class Exit {

    /** Nothing to object to. */
    static final int FINE = 0;

    /** Findings at or above the threshold. */
    static final int FINDINGS = 1;

    /** Nothing could be read, or the call is wrong. */
    static final int BAD_CALL = 2;

    /** A fault of ours. */
    static final int FAULT = 3;

    private Exit() {
    }
}
