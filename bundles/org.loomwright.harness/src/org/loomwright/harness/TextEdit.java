// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.Comparator;
import java.util.List;

/**
 * A replacement of a stretch of one file's text. All that changes sources is made of these.
 *
 * @param span what is replaced; a span of length 0 inserts
 * @param text what stands there afterwards
 */
public record TextEdit(Span span, String text) {

    /**
     * The text after the edits, which must not overlap.
     *
     * @throws IllegalArgumentException if two edits overlap or one lies outside the text
     */
    public static String apply(String text, List<TextEdit> edits) {
        StringBuilder result = new StringBuilder(text.length());
        int at = 0;
        for (TextEdit edit : edits.stream().sorted(Comparator.comparing(TextEdit::span)).toList()) {
            if (edit.span.offset() < at || edit.span.end() > text.length()) {
                throw new IllegalArgumentException("edits overlap or lie outside the text at " + edit.span.at());
            }
            result.append(text, at, edit.span.offset()).append(edit.text);
            at = edit.span.end();
        }
        return result.append(text, at, text.length()).toString();
    }
}
