// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * What a check depends on besides the project.
 *
 * @param today the day on which waivers are judged; empty to let every waiver hold. Never read from a clock here
 * @param every whether circuits are solved for every vehicle, however long that takes; else within a budget
 */
public record Settings(Optional<LocalDate> today, boolean every) {

    /** Every waiver holds. */
    public static final Settings TIMELESS = new Settings(Optional.empty(), false);

    public Settings {
        Objects.requireNonNull(today);
    }

    /** Returns the same that solve circuits for every vehicle, or within a budget. */
    public Settings solving(boolean all) {
        return new Settings(today, all);
    }

    /** Returns settings for a day. */
    public static Settings on(LocalDate day) {
        return new Settings(Optional.of(day), false);
    }
}
