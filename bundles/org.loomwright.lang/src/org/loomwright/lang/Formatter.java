// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import java.util.ArrayList;
import java.util.List;
import org.antlr.runtime.CommonToken;
import org.loomwright.harness.LineIndex;
import org.loomwright.lang.format.Layout;
import org.loomwright.lang.lines.Conflicts;
import org.loomwright.lang.lines.RawTokens;
import org.loomwright.lang.lines.TokenTypes;
import org.loomwright.lang.parser.antlr.internal.InternalLoomLexer;
import org.loomwright.lang.text.Problems;

/**
 * The canonical form of a text. Four spaces a level, one space between words, braces at the end of the line that opens
 * a block and on a line of their own, two spaces before a comment at the end of a line, at most one blank line in a row
 * and none next to a brace or at either end of the file, LF. Nothing is aligned in columns, so that a change to one
 * line is a change of one line.
 *
 * <p>Only white space and line ends change: every word, figure and comment stays, in its order, on its line, whether or
 * not the text can be read. A text whose words would be read differently afterwards is returned as it was, and so is
 * one with conflicts of a merge in it. Formatting twice changes nothing. O(text); pure, so any number of threads may
 * call it.
 */
public final class Formatter {
    private Formatter() {
    }

    /** Returns the canonical form of a text. */
    public static String format(String text) {
        String source = text.startsWith("\uFEFF") ? text.substring(1) : text;
        if (Conflicts.in(source)) {
            return text;
        }
        TokenTypes types = TokenTypes.ofLexer();
        List<CommonToken> tokens = tokens(source, types);
        String formatted = new Layout(types).format(tokens);
        return words(tokens, types).equals(words(tokens(formatted, types), types)) ? formatted : source;
    }

    private static List<CommonToken> tokens(String text, TokenTypes types) {
        return RawTokens.of(new InternalLoomLexer(), text, types, new Problems(new LineIndex("", text)));
    }

    /** What must not change: all but white space, with blanks at line ends within comments left out. */
    private static List<String> words(List<CommonToken> tokens, TokenTypes types) {
        List<String> words = new ArrayList<>(tokens.size());
        for (CommonToken token : tokens) {
            if (types.visible(token.getType())) {
                words.add(token.getText());
            } else if (token.getType() == types.comment() || token.getType() == types.longComment()) {
                words.add(Layout.withoutTrailingBlanks(token.getText()));
            }
        }
        return words;
    }
}
