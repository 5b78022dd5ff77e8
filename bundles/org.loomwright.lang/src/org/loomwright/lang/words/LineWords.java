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
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.ParserRule;
import org.loomwright.lang.lines.Blocks;
import org.loomwright.lang.lines.GrammarSearch;
import org.loomwright.lang.lines.GrammarSearch.Frame;

/** Matches the words of one line against the grammar: what each is, and what could stand behind the last one. */
final class LineWords extends GrammarSearch {

    private final Slots slots;
    /** What was taken for each word on the path that is being tried, and on the one that got furthest. */
    private final Slot[] path;
    private final Slot[] best;
    private final Set<Slot> expected = new LinkedHashSet<>();
    private int furthest = -1;

    private LineWords(List<CommonToken> tokens, Blocks blocks, Slots slots) {
        super(tokens, blocks);
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
        boolean complete = matcher.matches(rule);
        List<Slot> found = new ArrayList<>(tokens.size());
        for (int i = 0; i < tokens.size(); i++) {
            Slot slot = complete ? matcher.path[i] : i < matcher.furthest ? matcher.best[i] : null;
            found.add(slot == null ? Slot.UNREAD : slot);
        }
        return new Match(found, matcher.expected, complete);
    }

    /** What ends a line is satisfied by the end of the words; nothing is matched behind it. */
    @Override
    protected boolean token(AbstractElement element, int at, IntPredicate next, int type, boolean endsLine) {
        if (at > furthest) {
            furthest = at;
            expected.clear();
            System.arraycopy(path, 0, best, 0, at);
        }
        if (endsLine) {
            return at == size();
        }
        if (is(at, type)) {
            path[at] = slots.of(element, frame());
            return next.test(at + 1);
        }
        if (at == furthest) {
            expected.add(slots.of(element, frame()));
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
