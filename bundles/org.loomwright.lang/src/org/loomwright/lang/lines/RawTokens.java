// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.lines;

import java.util.ArrayList;
import java.util.List;
import org.antlr.runtime.ANTLRStringStream;
import org.antlr.runtime.CharStream;
import org.antlr.runtime.CommonToken;
import org.antlr.runtime.Token;
import org.antlr.runtime.TokenSource;
import org.eclipse.xtext.parser.antlr.Lexer;
import org.loomwright.lang.text.Problems;

/**
 * The tokens of a text as its characters give them, before lines and blocks are looked at. Quotes and comments that are
 * never closed end with their line. O(text).
 */
public final class RawTokens {
    private static final int MOST_OPEN_COMMENTS = 20;

    private final Lexer lexer;
    private final String text;
    private final CharStream chars;
    private final TokenTypes types;
    private final Problems problems;
    private final List<CommonToken> tokens;
    private int openComments;

    private RawTokens(Lexer lexer, String text, TokenTypes types, Problems problems) {
        this.lexer = lexer;
        this.text = text;
        this.types = types;
        this.problems = problems;
        chars = new ANTLRStringStream(text);
        tokens = new ArrayList<>(16 + text.length() / 3);
    }

    /** Returns the tokens of a text and adds to the problems what is not closed. */
    public static List<CommonToken> of(Lexer lexer, String text, TokenTypes types, Problems problems) {
        return new RawTokens(lexer, text, types, problems).read();
    }

    private List<CommonToken> read() {
        lexer.setCharStream(chars);
        TokenSource source = lexer;
        for (Token next = source.nextToken(); next != Token.EOF_TOKEN; next = source.nextToken()) {
            CommonToken token = (CommonToken) next;
            if (token.getType() == Token.INVALID_TOKEN_TYPE || token.getType() == types.badLine()
                    || token.getType() == types.string() && afterNumber(token.getStartIndex())) {
                mend(token);
            } else if (token.getType() == types.string()) {
                escapes(token);
            } else if (token.getType() == types.other() && text.charAt(token.getStartIndex()) == '\''
                    && afterNumber(token.getStartIndex())) {
                token.setType(types.word());
            }
            tokens.add(token);
        }
        return tokens;
    }

    private void mend(CommonToken token) {
        int start = token.getStartIndex();
        token.setChannel(Token.DEFAULT_CHANNEL);
        if (text.startsWith("/*", start) && text.indexOf("*/", start + 2) < 0) {
            int end = endOfLine(start);
            token.setType(types.longComment());
            if (openComments++ < MOST_OPEN_COMMENTS) {
                token.setStopIndex(end - 1);
                chars.seek(end);
                problems.add("comment-open", start, 2, "the comment that starts here never ends",
                        "end it with */, or start it with // for one line",
                        problems.replace(start, 2, "//"));
            }
        } else if (text.charAt(start) == '"' && afterNumber(start)) {
            token.setType(types.word());
            token.setStopIndex(start);
            chars.seek(start + 1);
        } else if (text.charAt(start) == '"') {
            String rest = text.substring(start, token.getStopIndex() + 1).stripTrailing();
            rest = rest.endsWith("{") ? rest.substring(0, rest.length() - 1).stripTrailing() : rest;
            int end = start + rest.length();
            token.setType(types.string());
            token.setStopIndex(end - 1);
            chars.seek(end);
            problems.damage(problems.lines().line(start));
            problems.add("quote-open", start, end - start, "the text that starts here has no closing quote",
                    "close it with \" on the same line", problems.insert(end, "\""));
        } else {
            token.setType(types.other());
        }
    }

    /** A quote right behind a number stands for inches, and an apostrophe for feet; both are taken for unit words. */
    private boolean afterNumber(int start) {
        CommonToken last = tokens.isEmpty() ? null : tokens.getLast();
        return last != null && last.getType() == types.integer() && last.getStopIndex() == start - 1;
    }

    private void escapes(CommonToken token) {
        int end = token.getStopIndex();
        for (int at = text.indexOf('\\', token.getStartIndex(), end); at >= 0; at = text.indexOf('\\', at + 2, end)) {
            char escaped = text.charAt(at + 1);
            if (escaped != '"' && escaped != '\\') {
                problems.add("escape-unknown", at, 2, "\\" + escaped + " means nothing here",
                        "within quotes, write \\\" for a quote and \\\\ for a backslash",
                        problems.insert(at, "\\"));
            }
        }
    }

    private int endOfLine(int offset) {
        int end = text.indexOf('\n', offset);
        end = end < 0 ? text.length() : end;
        return end > offset && text.charAt(end - 1) == '\r' ? end - 1 : end;
    }
}
