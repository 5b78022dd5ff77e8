// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.words;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntPredicate;
import org.antlr.runtime.CommonToken;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.Action;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.EnumLiteralDeclaration;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.TerminalRule;
import org.loomwright.lang.lines.Blocks;

/**
 * Matches the words of one line against the grammar: what each of them is, and what could stand behind the last one.
 * Searches with continuations, so nothing is read twice along one path; the grammar branches on a word or two, so the
 * work is about linear in the words. One for one line; not thread-safe.
 */
final class LineWords {

    private final List<CommonToken> tokens;
    private final Blocks blocks;
    private final Slots slots;
    /** What was taken for each word on the path that is being tried, and on the one that got furthest. */
    private final Slot[] path;
    private final Slot[] best;
    private final Set<Slot> expected = new LinkedHashSet<>();
    private int furthest = -1;
    private Frame frame;

    /** What has been begun. */
    record Frame(AbstractElement element, Frame outer) {
    }

    private LineWords(List<CommonToken> tokens, Blocks blocks, Slots slots) {
        this.tokens = tokens;
        this.blocks = blocks;
        this.slots = slots;
        path = new Slot[tokens.size()];
        best = new Slot[tokens.size()];
    }

    /**
     * The outcome.
     *
     * @param slots    what each word is; those behind the first that does not fit are unread
     * @param expected what could stand at the first word that does not fit, or behind the last one
     * @param complete whether the words are a whole line
     */
    record Match(List<Slot> slots, Set<Slot> expected, boolean complete) {
    }

    static Match match(ParserRule rule, List<CommonToken> tokens, Blocks blocks, Slots slots) {
        LineWords matcher = new LineWords(tokens, blocks, slots);
        boolean complete = matcher.element(rule.getAlternatives(), 0, at -> true);
        List<Slot> found = new ArrayList<>(tokens.size());
        for (int i = 0; i < tokens.size(); i++) {
            Slot slot = complete ? matcher.path[i] : i < matcher.furthest ? matcher.best[i] : null;
            found.add(slot == null ? Slot.UNREAD : slot);
        }
        return new Match(found, matcher.expected, complete);
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
        Frame own = new Frame(outer, before);
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

    /** What ends a line is satisfied by the end of the words; nothing is matched behind it. */
    private boolean token(AbstractElement element, int at, IntPredicate next, int type, boolean endsLine) {
        if (at > furthest) {
            furthest = at;
            expected.clear();
            System.arraycopy(path, 0, best, 0, at);
        }
        if (endsLine) {
            return at == tokens.size();
        }
        if (at < tokens.size() && tokens.get(at).getType() == type) {
            path[at] = slots.of(element, frame);
            return next.test(at + 1);
        }
        if (at == furthest) {
            expected.add(slots.of(element, frame));
        }
        return false;
    }

    /** The slots of grammar elements, each made once. Not thread-safe. */
    static final class Slots {

        private record Key(AbstractElement element, AbstractElement inner, AbstractElement outer) {
        }

        private final Map<Key, Slot> known = new HashMap<>();

        Slot of(AbstractElement element, Frame frame) {
            AbstractElement inner = null;
            AbstractElement outer = null;
            for (Frame each = frame; each != null; each = each.outer()) {
                if (each.element() instanceof Assignment) {
                    inner = inner == null ? each.element() : inner;
                    outer = each.element();
                }
            }
            Key key = new Key(element, inner, outer);
            Slot slot = known.get(key);
            if (slot == null) {
                slot = SlotOf.of(element, frame, (Assignment) inner, (Assignment) outer);
                known.put(key, slot);
            }
            return slot;
        }
    }
}
