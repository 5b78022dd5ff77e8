// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.format;

import java.util.List;
import java.util.Set;
import org.antlr.runtime.CommonToken;
import org.loomwright.lang.lines.TokenTypes;

/**
 * The space between two tokens of a line: one, or none within a figure, a colour, a date, the name of an end, and
 * inside of parentheses. Never so that the two would be read as something else.
 */
final class Spacing {
    /** Lines whose second word may be a name of the line itself, set off by a colon. */
    private static final Set<String> NAMED_LINES = Set.of("never", "require", "waive");

    private final TokenTypes types;

    Spacing(TokenTypes types) {
        this.types = types;
    }

    /** Returns whether a space stands before the token at an index of a line; the first one has none. */
    boolean before(List<CommonToken> line, int at) {
        CommonToken left = line.get(at - 1);
        CommonToken right = line.get(at);
        if (!types.visible(left.getType()) || !types.visible(right.getType())) {
            return true;
        }
        if (isMark(right) && left.getStopIndex() + 1 == right.getStartIndex()) {
            return false;
        }
        String before = text(left);
        String after = text(right);
        return switch (after) {
            case ",", ")" -> false;
            case ":", "/" -> !isPlain(left);
            case "." -> left.getType() != types.integer() || !isDigits(line, at + 1);
            case "-" -> !(inDate(line, at) && left.getType() == types.integer());
            default -> switch (before) {
                case "(" -> false;
                case ":" -> !isPlain(right) || namesLine(line, at - 1);
                case "/" -> !isPlain(right);
                case "." -> at < 2 || line.get(at - 2).getType() != types.integer() || !isDigits(line, at);
                case "-" -> !isDigits(line, at);
                case "+" -> !isDigits(line, at);
                default -> true;
            };
        };
    }

    private static String text(CommonToken token) {
        return token.getStopIndex() - token.getStartIndex() > 1 ? "" : token.getText();
    }

    /** A word, name or number: what may touch a colon or a stroke. */
    private boolean isPlain(CommonToken token) {
        int first = token.getText().codePointAt(0);
        return Character.isLetterOrDigit(first) || first == '_';
    }

    /** A mark for inches or feet, which is one only where it touches its number. */
    private boolean isMark(CommonToken token) {
        return token.getType() == types.word() && !isPlain(token);
    }

    private boolean isDigits(List<CommonToken> line, int at) {
        int type = at < line.size() ? line.get(at).getType() : types.other();
        return type == types.integer() || type == types.code();
    }

    private boolean inDate(List<CommonToken> line, int at) {
        int start = at - 1;
        while (start > 0 && (line.get(start).getType() == types.integer() || text(line.get(start)).equals("-"))) {
            start--;
        }
        return line.get(start).getText().equals("until") && isDigits(line, at + 1);
    }

    private static boolean namesLine(List<CommonToken> line, int colon) {
        return colon == 2 && NAMED_LINES.contains(line.get(0).getText());
    }
}
