// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.match.Matching;

/**
 * Which line of one version is which of another. Lines that declare elements follow the matching of the elements, so
 * that a renamed or moved one is itself; other lines are told by what they say, then by what they are about. Linear.
 */
final class Pairs {

    private static final String FACT = "fact";

    private final Map<TextNode, TextNode> partners = new IdentityHashMap<>();
    private final Map<TextNode, TextNode> reversed = new IdentityHashMap<>();

    /** Pairs the lines of two versions. */
    static Pairs of(Side base, Side side, Matching matching) {
        Pairs pairs = new Pairs();
        pairs.put(base.file(), side.file());
        matching.partners().forEach((before, after) -> pairs.element(base.at(before), side.at(after)));
        pairs.below(base.file());
        return pairs;
    }

    /** Pairs the lines that both of two versions have and the version that they come from has not. */
    static void added(TextNode ours, TextNode theirs, Pairs fromBase, Pairs fromBaseToTheirs, Pairs into) {
        List<TextNode> one = ours.children.stream().filter(each -> !fromBase.reversed.containsKey(each)).toList();
        List<TextNode> other = theirs.children.stream()
                .filter(each -> !fromBaseToTheirs.reversed.containsKey(each)).toList();
        into.by(one, other, each -> each.head.words());
        into.by(one, other, each -> each.head.mayRepeat() ? null : each.head.subject() + when(each));
    }

    TextNode partner(TextNode node) {
        return partners.get(node);
    }

    TextNode origin(TextNode node) {
        return reversed.get(node);
    }

    private void element(TextNode before, TextNode after) {
        if (before != null && after != null && !partners.containsKey(before) && !reversed.containsKey(after)) {
            put(before, after);
        }
    }

    private void put(TextNode before, TextNode after) {
        partners.put(before, after);
        reversed.put(after, before);
    }

    private void below(TextNode before) {
        TextNode after = partners.get(before);
        if (after != null) {
            by(before.children, after.children, each -> each.head.words());
            by(before.children, after.children, each -> each.head.subject() + when(each) + first(each));
            by(before.children, after.children, each -> each.head.subject() + when(each));
            by(before.children, after.children, each -> each.head.subject());
        }
        before.children.forEach(this::below);
    }

    private static String first(TextNode node) {
        return "\u0001" + (node.head.clauses().isEmpty() ? "" : node.head.clauses().getFirst().words());
    }

    private static String when(TextNode node) {
        return "\u0001" + node.head.clause("when").map(each -> each.words()).orElse("");
    }

    /** Pairs those that have no partner yet and share a key, in order; those without a key are left alone. */
    private void by(List<TextNode> before, List<TextNode> after, Function<TextNode, String> key) {
        Map<String, Deque<TextNode>> waiting = new HashMap<>();
        for (TextNode each : after) {
            if (!reversed.containsKey(each) && key.apply(each) != null) {
                waiting.computeIfAbsent(key.apply(each), any -> new ArrayDeque<>()).add(each);
            }
        }
        if (waiting.isEmpty()) {
            return;
        }
        for (TextNode each : new ArrayList<>(before)) {
            Deque<TextNode> found = partners.containsKey(each) || key.apply(each) == null ? null
                    : waiting.get(key.apply(each));
            if (found != null && !found.isEmpty()) {
                put(each, found.poll());
            }
        }
    }

    /**
     * A version with its elements.
     *
     * @param file  its lines
     * @param lines the line of each element
     */
    record Side(TextNode file, Map<ItemId, TextNode> lines) {

        static Side of(TextNode file, Version version) {
            Map<Integer, TextNode> byLine = new HashMap<>();
            collect(file, byLine);
            Map<ItemId, TextNode> lines = new HashMap<>();
            version.facts().items().forEach((id, item) -> {
                TextNode node = byLine.get(item.span().line());
                if (node != null) {
                    lines.put(id, node);
                }
            });
            return new Side(file, lines);
        }

        private static void collect(TextNode node, Map<Integer, TextNode> byLine) {
            for (TextNode child : node.children) {
                byLine.put(child.line, child);
                collect(child, byLine);
            }
        }

        TextNode at(ItemId id) {
            return lines.get(id);
        }
    }
}
