// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Expression.And;
import org.loomwright.condition.Expression.Choice;
import org.loomwright.condition.Expression.Compare;
import org.loomwright.condition.Expression.Not;
import org.loomwright.condition.Expression.Range;

/**
 * Words for sets of parts of years. A set is written as runs joined by {@code or}, or as {@code not} of such runs,
 * whichever has fewer words; ties go to the runs, then to fewer of them, then to more parts. Not safe for several
 * threads; nobody may change the sets that are returned.
 */
final class YearPhrases {
    private static final String YEAR = Choices.YEAR;

    /** Words, how many they are without {@code and} and {@code or}, and the parts of years that they mean. */
    record Phrase(Expression expression, int words, BitSet members) {
    }

    /** Runs, each from one part to another, that together are some members. */
    private record Runs(List<int[]> ends, BitSet members, int words) {
    }

    /** What was asked for: the runs of some years come in many conditions. */
    private record Asked(BitSet must, BitSet may) {
    }

    private static final int MOST_KNOWN = 4_096;

    private final YearParts parts;
    private final Map<Asked, Phrase> known = new HashMap<>();

    YearPhrases(YearParts parts) {
        this.parts = parts;
    }

    /** Returns the cheapest words for a set that holds all of one, not empty, and none outside another, not full. */
    Phrase cheapest(BitSet must, BitSet may) {
        Phrase same = known.get(new Asked(must, may));
        if (same == null) {
            if (known.size() >= MOST_KNOWN) {
                known.clear();
            }
            same = found(must, may);
            known.put(new Asked((BitSet) must.clone(), (BitSet) may.clone()), same);
        }
        return same;
    }

    private Phrase found(BitSet must, BitSet may) {
        Runs runs = runs(must, may);
        Phrase others = others(complement(may), complement(must));
        return runs.words() <= others.words()
                ? new Phrase(joined(runs), runs.words(), runs.members())
                : new Phrase(others.expression(), others.words(), complement(others.members()));
    }

    private BitSet complement(BitSet members) {
        BitSet complement = (BitSet) members.clone();
        complement.flip(0, parts.count());
        return complement;
    }

    /** Returns the cheapest words for everything but a set between two bounds, and that set. */
    private Phrase others(BitSet must, BitSet may) {
        Runs runs = runs(must, may);
        int first = wholeYear(must, may);
        if (first >= 0 && runs.words() > 2) {
            BitSet year = new BitSet();
            year.set(first, parts.end(first) + 1);
            return new Phrase(new Compare(YEAR, Relation.NE, Integer.toString(parts.year(first))), 3, year);
        }
        return new Phrase(new Not(joined(runs)), 1 + runs.words(), runs.members());
    }

    /** Returns the first part of a year that lies between two bounds, or -1. */
    private int wholeYear(BitSet must, BitSet may) {
        int part = must.isEmpty() ? -1 : must.nextSetBit(0);
        while (part > 0 && !parts.isFirstOfYear(part)) {
            part--;
        }
        if (part < 0) {
            return -1;
        }
        int after = parts.end(part) + 1;
        return must.length() <= after && may.nextClearBit(part) >= after ? part : -1;
    }

    private Expression joined(Runs runs) {
        List<Expression> operands = new ArrayList<>();
        for (int[] ends : runs.ends()) {
            operands.add(run(ends[0], ends[1]).expression());
        }
        return Expression.anyOf(operands);
    }

    /** Returns the cheapest runs between two bounds, found from the first part to the last. */
    private Runs runs(BitSet must, BitSet may) {
        Runs[] upTo = new Runs[parts.count() + 1];
        upTo[0] = new Runs(List.of(), new BitSet(), 0);
        for (int part = 0; part < parts.count(); part++) {
            if (!must.get(part)) {
                upTo[part + 1] = better(upTo[part + 1], upTo[part]);
            }
            for (int end = part; end < parts.count() && may.get(end) && upTo[part] != null; end++) {
                upTo[end + 1] = better(upTo[end + 1], extended(upTo[part], part, end));
            }
        }
        return upTo[parts.count()];
    }

    private Runs extended(Runs runs, int from, int to) {
        List<int[]> ends = new ArrayList<>(runs.ends());
        ends.add(new int[] {from, to});
        BitSet members = (BitSet) runs.members().clone();
        members.set(from, to + 1);
        return new Runs(ends, members, runs.words() + run(from, to).words());
    }

    private static Runs better(Runs one, Runs other) {
        if (one == null || other == null) {
            return one == null ? other : one;
        }
        int order = Integer.compare(one.words(), other.words());
        order = order != 0 ? order : Integer.compare(one.ends().size(), other.ends().size());
        order = order != 0 ? order : Integer.compare(other.members().cardinality(), one.members().cardinality());
        return order <= 0 ? one : other;
    }

    /** Returns the words for the parts from one to another. */
    private Phrase run(int from, int to) {
        BitSet members = new BitSet();
        members.set(from, to + 1);
        String start = parts.startName(from);
        boolean oneYear = parts.year(from) == parts.year(to) && parts.isFirstOfYear(from);
        if (from == to && !parts.isFirstOfYear(from)) {
            return new Phrase(new Choice(start), 1, members);
        }
        if (oneYear && parts.isLastOfYear(to)) {
            return new Phrase(new Compare(YEAR, Relation.EQ, start), 3, members);
        }
        if (from == 0) {
            return new Phrase(upTo(to), 3, members);
        }
        if (to == parts.count() - 1) {
            return new Phrase(new Compare(YEAR, Relation.GE, start), 3, members);
        }
        if (parts.endName(to).isPresent()) {
            return new Phrase(new Range(YEAR, start, parts.endName(to).get()), 4, members);
        }
        Expression since = new Compare(YEAR, oneYear ? Relation.EQ : Relation.GE, start);
        if (oneYear ? parts.isLastOfYear(to + 1) : to + 2 == parts.count()) {
            return new Phrase(new And(List.of(since, new Not(new Choice(parts.startName(to + 1))))), 5, members);
        }
        return new Phrase(new And(List.of(new Compare(YEAR, Relation.GE, start), upTo(to))), 6, members);
    }

    private Expression upTo(int to) {
        return parts.endName(to)
                .map(name -> new Compare(YEAR, Relation.LE, name))
                .orElseGet(() -> new Compare(YEAR, Relation.LT, parts.startName(to + 1)));
    }
}
