// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.lines;

import java.util.List;
import org.antlr.runtime.CommonToken;
import org.loomwright.lang.text.Problems;

/**
 * How deep braces, parentheses and rows of {@code not} are nested, counted on tokens before anything recurses.
 *
 * @param excess opening braces without a closing one, less closing braces without an opening one
 * @param refused the first token that is nested too deep, or null
 */
record Nesting(int excess, CommonToken refused) {
    static final int MOST_BRACES = 20;
    static final int MOST_BRACKETS = 50;

    static Nesting of(List<CommonToken> tokens, TokenTypes types) {
        int balance = 0;
        int braces = 0;
        int brackets = 0;
        int negations = 0;
        CommonToken refused = null;
        for (CommonToken token : tokens) {
            int type = token.getType();
            if (type == types.open()) {
                balance++;
                braces++;
            } else if (type == types.close()) {
                balance--;
                braces = Math.max(0, braces - 1);
            } else if (type == types.endOfLine()) {
                brackets = 0;
                negations = 0;
            } else if (type == types.openBracket()) {
                brackets++;
            } else if (type == types.closeBracket()) {
                brackets = Math.max(0, brackets - 1);
            } else if (type == types.not()) {
                negations++;
            } else if (types.visible(type)) {
                negations = 0;
            }
            if (refused == null && (braces > MOST_BRACES || brackets + negations > MOST_BRACKETS)) {
                refused = token;
            }
        }
        return new Nesting(balance, refused);
    }

    boolean isTooDeep() {
        return refused != null;
    }

    void report(Problems problems) {
        problems.add("nested-too-deep", refused.getStartIndex(), refused.getStopIndex() + 1 - refused.getStartIndex(),
                "the file is not read: braces are nested more than " + MOST_BRACES + " or parentheses more than "
                        + MOST_BRACKETS + " deep here", "divide what stands here");
    }
}
