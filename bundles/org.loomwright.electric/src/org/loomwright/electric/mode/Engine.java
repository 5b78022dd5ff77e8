// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.mode;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What the engine does in a mode. The words are those of {@code set engine to}. */
public enum Engine {
    /** It stands. */
    STOPPED,
    /** The cranking motor turns it. */
    CRANK,
    /** It idles, hot. */
    IDLE,
    /** It turns as on the road. */
    CRUISE,
    /** The key is off and it has not come to rest: machines still turn, nothing is cranked. */
    TURNING;

    /** Returns the word of the language. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Returns the state of that word. */
    public static Optional<Engine> of(String word) {
        return Arrays.stream(values()).filter(each -> each.word().equals(word)).findFirst();
    }

    /** Returns whether generators and alternators give current. */
    public boolean charges() {
        return this == IDLE || this == CRUISE || this == TURNING;
    }

    /** Returns whether it runs by its own power. */
    public boolean runs() {
        return this == IDLE || this == CRUISE;
    }
}
