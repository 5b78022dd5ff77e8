// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.loomwright.quantity.Quantity;

/**
 * How a shop judges: what findings of a rule weigh, and figures of its own instead of the defaults.
 *
 * @param name       the practice's name
 * @param title      words for people
 * @param platform   the platform that it is for; empty for every platform of the project
 * @param treatments rules whose findings weigh otherwise
 * @param settings   figures of its own
 * @param span       the whole element
 */
public record Practice(Name name, String title, Optional<Ref> platform, List<Treatment> treatments,
        List<Setting> settings, Span span) implements Element {

    /** What findings of a rule are treated as. */
    public enum Weight {
        ERROR, WARNING, NOTE,
        /** They are set aside: shown on request, counted, without effect on the outcome. */
        SILENT;

        /** The word of the language. */
        public String words() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * Findings of one rule weigh otherwise.
     *
     * @param rule     id of the rule
     * @param weight   what they are treated as
     * @param reason   why
     * @param span     the whole line
     */
    public record Treatment(Name rule, Weight weight, String reason, Span span) {
    }

    /**
     * A figure of its own.
     *
     * @param limit    which
     * @param value    the figure, of the limit's dimension and within its bounds
     * @param source   where it comes from
     * @param span     the whole line
     */
    public record Setting(Limit limit, Quantity value, String source, Span span) {
    }

    public Practice {
        treatments = List.copyOf(treatments);
        settings = List.copyOf(settings);
    }
}
