// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.parser;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntPredicate;
import org.antlr.runtime.CommonToken;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Action;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.EnumLiteralDeclaration;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.TerminalRule;
import org.loomwright.lang.lines.Blocks;

/**
 * Matches one line that is known to be faulty against the grammar, to learn how far it can be read and what could have
 * come next. Searches with continuations, so nothing is read twice along one path; the grammar branches on a token or
 * two, so the work is about linear in the tokens. Not thread-safe.
 */
final class LineMatcher {
    private final List<CommonToken> tokens;
    private final Blocks blocks;
    private final Set<AbstractElement> expected = new LinkedHashSet<>();
    private int furthest;
    private Frame frame;

    /** What has been begun and where. */
    private record Frame(AbstractElement element, int at, Frame outer) {
    }

    private LineMatcher(List<CommonToken> tokens, Blocks blocks) {
        this.tokens = tokens;
        this.blocks = blocks;
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
        matcher.element(rule.getAlternatives(), 0, at -> true);
        return new Match(matcher.furthest, matcher.expected);
    }

    private boolean element(AbstractElement element, int at, IntPredicate next) {
        String cardinality = element.getCardinality();
        return switch (cardinality == null ? "" : cardinality) {
            case "?" -> single(element, at, next) || next.test(at);
            case "*" -> repeated(element, at, next) || next.test(at);
            case "+" -> repeated(element, at, next);
            default -> single(element, at, next);
        };
    }

    private boolean repeated(AbstractElement element, int at, IntPredicate next) {
        return single(element, at, then -> then > at && repeated(element, then, next) || next.test(then));
    }

    private boolean single(AbstractElement element, int at, IntPredicate next) {
        return switch (element) {
            case Group group -> sequence(group.getElements(), 0, at, next);
            case Alternatives either -> either.getElements().stream().anyMatch(one -> element(one, at, next));
            case Assignment assignment -> within(assignment, assignment.getTerminal(), at, next);
            case CrossReference reference -> within(reference, reference.getTerminal(), at, next);
            case EnumLiteralDeclaration literal -> element(literal.getLiteral(), at, next);
            case Action action -> next.test(at);
            case RuleCall call when call.getRule() instanceof TerminalRule rule -> token(call, at, next,
                    blocks.terminal(rule.getName()), rule.getName().equals("EOL"));
            case RuleCall call -> within(call, call.getRule().getAlternatives(), at, next);
            case Keyword word -> token(word, at, next, blocks.type(word.getValue()),
                    word.getValue().equals("{"));
            default -> false;
        };
    }

    private boolean sequence(List<AbstractElement> parts, int part, int at, IntPredicate next) {
        return part == parts.size() ? next.test(at)
                : element(parts.get(part), at, then -> sequence(parts, part + 1, then, next));
    }

    private boolean within(AbstractElement outer, AbstractElement inner, int at, IntPredicate next) {
        Frame before = frame;
        frame = new Frame(outer, at, before);
        Frame own = frame;
        boolean matched = element(inner, at, then -> {
            frame = before;
            boolean rest = next.test(then);
            frame = own;
            return rest;
        });
        frame = before;
        return matched;
    }

    /** The last token of a line satisfies whatever ends a line; nothing is matched behind it. */
    private boolean token(AbstractElement element, int at, IntPredicate next, int type, boolean endsLine) {
        if (at < tokens.size() && tokens.get(at).getType() == type) {
            return endsLine || next.test(at + 1);
        }
        if (at > furthest) {
            furthest = at;
            expected.clear();
        }
        if (at == furthest) {
            AbstractElement outermost = element;
            for (Frame each = frame; each != null && each.at == at; each = each.outer) {
                outermost = each.element instanceof RuleCall ? outermost : each.element;
            }
            expected.add(outermost);
        }
        return false;
    }
}
