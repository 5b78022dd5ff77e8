// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.eclipse.emf.ecore.EObject;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Span;
import org.loomwright.lang.text.Problems;

/**
 * One file while its snapshot is built: its text, its lines, and what is wrong with it.
 *
 * @param words the words that were cut out of the text, each once: most of them come again and again
 */
record FileText(LineIndex lines, Problems problems, Features features, Map<String, String> words) {
    private static final Pattern WHITE_SPACE = Pattern.compile("\\s+");

    String text() {
        return lines.text();
    }

    FileText(LineIndex lines, Problems problems, Features features) {
        this(lines, problems, features, new HashMap<>());
    }

    /** Cuts a word out of the text. */
    String word(int start, int end) {
        String word = text().substring(start, end);
        String before = words.putIfAbsent(word, word);
        return before == null ? word : before;
    }

    Written of(EObject object) {
        return new Written(this, object);
    }

    /** Adds a problem, unless the line is known to be damaged and this most likely follows from it. */
    void missing(String code, Span span, String message, String advice) {
        if (!problems.isDamaged(span.line())) {
            problems.add(code, span, message, advice);
        }
    }

    /** A property that may be stated once is stated again. */
    void again(Span span, String property) {
        problems.add("stated-twice", span, "the " + property + " is stated a second time", "keep one of the two lines");
    }

    /** Returns what is one figure or date without the white space that may stand between its parts. */
    static String withoutGaps(String text) {
        return text == null ? "" : WHITE_SPACE.matcher(text).replaceAll("");
    }

    static String orEmpty(String text) {
        return text == null ? "" : text;
    }
}
