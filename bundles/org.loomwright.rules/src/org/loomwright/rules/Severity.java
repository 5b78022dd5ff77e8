// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.Locale;

/** How much a finding weighs; later ones weigh more. */
public enum Severity {
    /** Worth knowing; nothing to mend, or nothing that could be judged. */
    NOTE,
    /** Likely wrong, or right only under a condition that the source does not state. */
    WARNING,
    /** Wrong. */
    ERROR;

    /** Returns whether this weighs at least as much as the other. */
    public boolean atLeast(Severity other) {
        return compareTo(other) >= 0;
    }

    /** Returns the word for people: {@code error}. */
    public String words() {
        return name().toLowerCase(Locale.ROOT);
    }
}
