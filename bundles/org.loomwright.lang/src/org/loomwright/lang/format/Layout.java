// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.format;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.antlr.runtime.CommonToken;
import org.loomwright.lang.lines.TokenTypes;

/**
 * Lays tokens out in lines. One use formats one text. Where braces do not balance, lines keep their indentation, since
 * it is the best witness of where the lost one stood.
 */
public final class Layout {
    private static final String INDENTATION = "    ";

    private final TokenTypes types;
    private final Spacing spacing;
    private final StringBuilder out = new StringBuilder();
    private final List<CommonToken> line = new ArrayList<>();
    private boolean balanced;
    private String indentation = "";
    private int depth;
    private boolean blankWanted;
    private boolean afterOpen = true;
    private boolean mayTakeBrace;

    public Layout(TokenTypes types) {
        this.types = types;
        spacing = new Spacing(types);
    }

    /** Returns the text without blanks and carriage returns at the ends of its lines. */
    public static String withoutTrailingBlanks(String text) {
        return text.indexOf('\n') < 0 ? text.stripTrailing()
                : text.lines().map(String::stripTrailing).collect(Collectors.joining("\n"));
    }

    public String format(List<CommonToken> tokens) {
        balanced = isBalanced(tokens);
        int newLines = 0;
        for (int at = 0; at < tokens.size(); at++) {
            CommonToken token = tokens.get(at);
            int type = token.getType();
            if (type == types.endOfLine()) {
                flush();
                newLines++;
                continue;
            }
            if (type == types.space()) {
                continue;
            }
            if (newLines > 0 || at < 2) {
                boolean indented = at > 0 && tokens.get(at - 1).getType() == types.space();
                indentation = indented ? tokens.get(at - 1).getText() : "";
            }
            blankWanted |= newLines > 1 && line.isEmpty();
            newLines = 0;
            if (type == types.close()) {
                flush();
            }
            line.add(token);
            if ((type == types.open() || type == types.close()) && !commentFollows(tokens, at + 1)) {
                flush();
            }
        }
        flush();
        return out.toString();
    }

    private boolean isBalanced(List<CommonToken> tokens) {
        int open = 0;
        for (CommonToken token : tokens) {
            open += token.getType() == types.open() ? 1 : token.getType() == types.close() ? -1 : 0;
            if (open < 0) {
                return false;
            }
        }
        return open == 0;
    }

    /** Whether only a comment stands between an index and the end of the line. */
    private boolean commentFollows(List<CommonToken> tokens, int from) {
        boolean comment = false;
        for (int at = from; at < tokens.size() && tokens.get(at).getType() != types.endOfLine(); at++) {
            if (types.visible(tokens.get(at).getType())) {
                return false;
            }
            comment |= tokens.get(at).getType() != types.space();
        }
        return comment;
    }

    private void flush() {
        if (line.isEmpty()) {
            return;
        }
        int first = line.getFirst().getType();
        boolean opens = line.stream().anyMatch(token -> token.getType() == types.open());
        if (first == types.close()) {
            depth = Math.max(0, depth - 1);
        }
        if (first == types.open() && mayTakeBrace) {
            out.setLength(out.length() - 1);
            out.append(' ');
        } else {
            boolean blank = blankWanted && !afterOpen && first != types.close();
            out.append(blank ? "\n" : "").append(balanced ? INDENTATION.repeat(depth) : indentation);
        }
        for (int at = 0; at < line.size(); at++) {
            CommonToken token = line.get(at);
            boolean comment = token.getType() == types.comment();
            out.append(at == 0 ? "" : comment ? "  " : spacing.before(line, at) ? " " : "");
            out.append(types.visible(token.getType()) ? token.getText() : withoutTrailingBlanks(token.getText()));
        }
        out.append('\n');
        boolean code = types.visible(line.getLast().getType());
        mayTakeBrace = code && !opens && first != types.close();
        afterOpen = opens;
        blankWanted = false;
        depth += opens ? 1 : 0;
        line.clear();
    }
}
