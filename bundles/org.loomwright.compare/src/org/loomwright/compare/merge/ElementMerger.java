// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.List;
import java.util.Optional;
import org.loomwright.compare.match.Matcher;
import org.loomwright.compare.match.Matching;
import org.loomwright.compare.merge.Pairs.Side;

/**
 * Merges element by element and fact by fact. A line is an element or a fact with its clauses; elements are matched as
 * {@link Matcher} does it, and whatever names a renamed one follows it on the other side. Takes as long as matching,
 * and beside it time linear in the texts.
 */
public final class ElementMerger implements SourceMerger {

    @Override
    public Optional<Merged> merge(Version base, Version ours, Version theirs, Marks marks) {
        Matching toOurs = Matcher.match(base.facts(), ours.facts());
        Matching toTheirs = Matcher.match(base.facts(), theirs.facts());
        List<String> texts = Unified.texts(base, ours, theirs, toOurs, toTheirs);
        Optional<TextNode> then = TextTree.of(texts.get(0));
        Optional<TextNode> one = TextTree.of(texts.get(1));
        Optional<TextNode> other = TextTree.of(texts.get(2));
        if (then.isEmpty() || one.isEmpty() || other.isEmpty()) {
            return oneSided(base, ours, theirs);
        }
        Side before = Side.of(then.get(), base);
        Side left = Side.of(one.get(), ours);
        Side right = Side.of(other.get(), theirs);
        Twin file = Twins.of(before, left, right, Pairs.of(before, left, toOurs), Pairs.of(before, right, toTheirs));
        return Optional.of(Writing.of(file, marks, texts.get(0), texts.get(1), texts.get(2)));
    }

    /** Where at most one side changed the file, nothing has to be taken apart. */
    private static Optional<Merged> oneSided(Version base, Version ours, Version theirs) {
        boolean oursChanged = !ours.text().equals(base.text());
        if (oursChanged && !theirs.text().equals(base.text()) && !theirs.text().equals(ours.text())) {
            return Optional.empty();
        }
        return Optional.of(new Merged(oursChanged ? ours.text() : theirs.text(), List.of()));
    }
}
