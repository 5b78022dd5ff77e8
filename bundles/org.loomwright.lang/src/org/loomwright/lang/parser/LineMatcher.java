// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.parser;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntPredicate;
import org.antlr.runtime.CommonToken;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.RuleCall;
import org.loomwright.lang.lines.Blocks;
import org.loomwright.lang.lines.GrammarSearch;

/**
 * Matches one line that is known to be faulty against the grammar, to learn how far it can be read and what could have
 * come next.
 */
final class LineMatcher extends GrammarSearch {
    private final Set<AbstractElement> expected = new LinkedHashSet<>();
    private int furthest;

    private LineMatcher(List<CommonToken> tokens, Blocks blocks) {
        super(tokens, blocks);
    }

    /**
     * The outcome.
     *
     * @param at how many tokens of the line can be read
     * @param expected what could come after those: of each the outermost element that would begin there, an assignment,
     * a        cross reference, a keyword or a call of the rule for the end of the line
     */
    record Match(int at, Set<AbstractElement> expected) {
    }

    static Match match(AbstractRule rule, List<CommonToken> tokens, Blocks blocks) {
        LineMatcher matcher = new LineMatcher(tokens, blocks);
        matcher.matches(rule);
        return new Match(matcher.furthest, matcher.expected);
    }

    /** The last token of a line satisfies whatever ends a line; nothing is matched behind it. */
    @Override
    protected boolean token(AbstractElement element, int at, IntPredicate next, int type, boolean endsLine) {
        if (is(at, type)) {
            return endsLine || next.test(at + 1);
        }
        if (at > furthest) {
            furthest = at;
            expected.clear();
        }
        if (at == furthest) {
            AbstractElement outermost = element;
            for (Frame each = frame(); each != null && each.at() == at; each = each.outer()) {
                outermost = each.element() instanceof RuleCall ? outermost : each.element();
            }
            expected.add(outermost);
        }
        return false;
    }
}
