// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.consequence;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.loomwright.rules.Severity;

/**
 * What follows from a revision in one respect.
 *
 * @param id       the word for programs: {@code fit}
 * @param title    the words for people: {@code fit margins}
 * @param lines    what is different, the worst first
 * @param headline the one thing that everybody must hear of; empty when nothing is worse
 */
public record Effect(String id, String title, List<Line> lines, Optional<String> headline) {

    public Effect {
        lines = List.copyOf(lines);
    }

    /** Whether it is worse than before. */
    public enum Direction {
        WORSE, OTHER, BETTER;

        /** The word for people. */
        public String words() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * One difference.
     *
     * @param direction whether it is worse
     * @param subject   what it is about: {@code wire 12b of front}
     * @param what      what was measured: {@code cut length}
     * @param before    on the old side; empty for something new
     * @param after     on the new side; empty for something gone
     * @param vehicles  the vehicles that feel it; empty where that is not the question
     * @param weight    what it weighs when it is an objection; empty for what is only told
     */
    public record Line(Direction direction, String subject, String what, String before, String after,
            String vehicles, Optional<Severity> weight) {

        /** Whether it is an objection of that weight or more. */
        public boolean objects(Severity threshold) {
            return weight.filter(each -> each.atLeast(threshold)).isPresent();
        }
    }

    /** Whether there is an objection of that weight or more. */
    public boolean objects(Severity threshold) {
        return lines.stream().anyMatch(line -> line.objects(threshold));
    }
}
