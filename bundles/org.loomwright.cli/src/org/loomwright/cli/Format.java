// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.loomwright.app.BadCall;

/** How results are printed. */
enum Format {
    /** For people. */
    TEXT,
    /** For programs; {@code docs/cli-json.md}. */
    JSON,
    /** SARIF 2.1.0, an open standard (OASIS) for what analyses find. */
    SARIF,
    /** One page that stands alone. */
    HTML,
    /** The XML in which unit tests are reported, which every build server reads. */
    JUNIT;

    private String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * Reads a word.
     *
     * @param option    the option that it was given to
     * @param permitted the formats that the command has, at least two
     * @throws BadCall if it is none of them
     */
    static Format of(String option, String word, List<Format> permitted) throws BadCall {
        for (Format format : permitted) {
            if (format.word().equals(word)) {
                return format;
            }
        }
        throw new BadCall(option + " is " + words(permitted) + ", not '" + word + "'");
    }

    /** {@code text, json or sarif}. */
    static String words(List<Format> permitted) {
        List<String> words = new ArrayList<>(permitted.stream().map(Format::word).toList());
        String last = words.removeLast();
        return String.join(", ", words) + " or " + last;
    }
}
