// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * What a check depends on besides the project.
 *
 * @param today the day on which waivers are judged; empty to let every waiver hold. Never read from a clock here
 */
public record Settings(Optional<LocalDate> today) {

    /** Every waiver holds. */
    public static final Settings TIMELESS = new Settings(Optional.empty());

    public Settings {
        Objects.requireNonNull(today);
    }

    /** Returns settings for a day. */
    public static Settings on(LocalDate day) {
        return new Settings(Optional.of(day));
    }
}
