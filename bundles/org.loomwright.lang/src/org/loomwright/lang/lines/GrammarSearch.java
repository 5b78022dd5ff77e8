// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.lines;

import java.util.List;
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

/**
 * Matches the tokens of one line against a rule of the grammar. Searches with continuations, so nothing is read twice
 * along one path; the grammar branches on a token or two, so the work is about linear in the tokens. What a search is
 * for is said by who extends it: it is asked about each token that is tried. One for one line; not thread-safe.
 */
public abstract class GrammarSearch {

    private final List<CommonToken> tokens;
    private final Blocks blocks;
    private Frame frame;

    /**
     * What has been begun.
     *
     * @param element an assignment, a cross reference, an enumeration's literal or the call of a rule
     * @param at      how many tokens stand before it
     * @param outer   what it is in; null for the outermost
     */
    public record Frame(AbstractElement element, int at, Frame outer) {
    }

    /** @param tokens the tokens of the line, without those that the grammar does not see */
    protected GrammarSearch(List<CommonToken> tokens, Blocks blocks) {
        this.tokens = tokens;
        this.blocks = blocks;
    }

    /** Returns whether the line is what the rule says. */
    protected final boolean matches(AbstractRule rule) {
        return element(rule.getAlternatives(), 0, at -> true);
    }

    /** Returns how many tokens there are. */
    protected final int size() {
        return tokens.size();
    }

    /** Returns whether there is a token at a place and it is of a type. */
    protected final boolean is(int at, int type) {
        return at < tokens.size() && tokens.get(at).getType() == type;
    }

    /** Returns the innermost of what has been begun; null before the first. */
    protected final Frame frame() {
        return frame;
    }

    /**
     * Tries a keyword or terminal.
     *
     * @param element  the keyword, or the call of the terminal's rule
     * @param at       the place of the token that is tried; it may be behind the last one
     * @param next     tries the rest from a place on
     * @param type     the type that a token must have
     * @param endsLine whether it ends the line
     * @return whether it matches, and what comes after it too
     */
    protected abstract boolean token(AbstractElement element, int at, IntPredicate next, int type, boolean endsLine);

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
            case EnumLiteralDeclaration literal -> within(literal, literal.getLiteral(), at, next);
            case Action action -> next.test(at);
            case RuleCall call when call.getRule() instanceof TerminalRule rule -> token(call, at, next,
                    blocks.terminal(rule.getName()), rule.getName().equals("EOL"));
            case RuleCall call -> within(call, call.getRule().getAlternatives(), at, next);
            case Keyword word -> token(word, at, next, blocks.type(word.getValue()), word.getValue().equals("{"));
            default -> false;
        };
    }

    private boolean sequence(List<AbstractElement> parts, int part, int at, IntPredicate next) {
        return part == parts.size() ? next.test(at)
                : element(parts.get(part), at, then -> sequence(parts, part + 1, then, next));
    }

    private boolean within(AbstractElement outer, AbstractElement inner, int at, IntPredicate next) {
        Frame before = frame;
        Frame own = new Frame(outer, at, before);
        frame = own;
        boolean matched = element(inner, at, then -> {
            frame = before;
            boolean rest = next.test(then);
            frame = own;
            return rest;
        });
        frame = before;
        return matched;
    }
}
