// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.clause;

import java.util.Map;
import java.util.Set;

/**
 * The words by which lines are taken apart. A word that is missing here makes a clause coarser, or a name that is spelt
 * like one makes it finer; either way it is the same for all versions of the line.
 */
final class Vocabulary {

    /** Words that begin a clause behind the first one of a line. */
    static final Set<String> STARTERS = Set.of("is", "at", "on", "mates", "of", "when", "from", "to", "length", "cable",
            "in", "ambient", "wet", "dry", "returns", "like", "fills", "extends", "through", "while", "source", "via",
            "by", "quantity", "until", "because", "after", "radius", "revision", "as", "within", "issue",
            "diameter", "mass", "joins", "made");

    /** Lines that begin with their fact; behind the first word of all others stands a name. */
    static final Set<String> FACTS = Set.of("size", "colour", "cable", "from", "to", "length", "legend", "as", "is",
            "mates", "for", "covers", "datum", "tolerance", "sheet", "note", "minimise", "serviceLoop", "movement",
            "excessAtMost", "cuttingGrid", "spacingAtLeast", "doublingBackAtMost", "branches", "breakouts", "years",
            "supply", "family", "basis", "gender", "keying", "type", "polarity", "called", "figuresFrom", "rating",
            "voltage", "power", "current", "start", "stall", "resistance", "temperature", "shortTime", "bore",
            "thickness", "mass", "takes", "fits", "strip", "height", "pull", "radius", "pullIn", "dropOut", "breaking",
            "diameter", "pins", "cavities", "states", "stands", "joins", "protects", "sold", "slack");

    /** Facts of which an element may have any number. */
    static final Set<String> MANY = Set.of("note", "covers", "for", "joins", "protects", "require", "never", "pins",
            "cavities");

    /** Facts of which an element may have one for each first clause. */
    static final Set<String> BY_FIRST = Set.of("slack", "stands", "sold", "sheet");

    /** Lines that have a name only if a colon follows it. */
    static final Set<String> NAMED_BY_COLON = Set.of("never", "require", "waive");

    /** Words that begin a fact, or an element of the catalogue if a title or a block follows. */
    static final Set<String> EITHER = Set.of("cable", "colour");

    /** Clauses that are lists, the order of which means nothing. */
    static final Set<String> LISTS = Set.of("covers", "for", "states", "pins", "cavities", "while");

    /** Lines in which a figure stands behind the second end, and what it states. */
    static final Map<String, String> MEASURED = Map.of("branch", "length", "strap", "resistance");

    private Vocabulary() {
    }

    /** Whether a word begins a clause behind another one; {@code from sheet} and {@code on sample} are of a length. */
    static boolean starts(LineWords.Word word, LineWords.Word before, LineWords.Word next) {
        if (!STARTERS.contains(word.text()) || !before.isWord() && !before.isQuoted() && !before.text().equals(")")) {
            return false;
        }
        String behind = next == null ? "" : next.text();
        return !(word.text().equals("from") && behind.equals("sheet"))
                && !(word.text().equals("on") && behind.equals("sample"))
                && !(word.text().equals("to") && before.text().equals("measured"))
                && !(word.text().equals("of") && before.text().equals("sample"))
                && !(word.text().equals("in") && before.isNumber());
    }
}
