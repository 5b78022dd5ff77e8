// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.loomwright.harness.clause.Clause;
import org.loomwright.harness.clause.ClauseLine;

/**
 * Merges one line clause by clause. The result has a line for either side; the two differ only in clauses that both
 * changed, each in its own way.
 *
 * @param ours   the line with our clauses where there is a conflict
 * @param theirs the line with theirs
 * @param facts  what is in conflict
 */
record LineMerge(ClauseLine ours, ClauseLine theirs, List<Fact> facts) {

    private static final String NOTHING = "nothing";

    /** A clause that is in conflict, with its three values. */
    record Fact(String word, String base, String ours, String theirs) {

        static Fact of(Clause base, Clause ours, Clause theirs) {
            Clause any = ours != null ? ours : theirs;
            return new Fact(any.word(), value(base), value(ours), value(theirs));
        }

        private static String value(Clause clause) {
            return clause == null ? NOTHING : clause.value();
        }
    }

    boolean isClean() {
        return facts.isEmpty();
    }

    /**
     * Merges a line.
     *
     * @param base null for a line that both sides added
     */
    static LineMerge of(ClauseLine base, ClauseLine ours, ClauseLine theirs) {
        if (base != null && theirs.equals(base) || ours.equals(theirs)) {
            return new LineMerge(ours, ours, List.of());
        }
        if (base != null && ours.equals(base)) {
            return new LineMerge(theirs, theirs, List.of());
        }
        ClauseLine before = base == null ? new ClauseLine(List.of(), "", "", "") : base;
        List<Clause> left = new ArrayList<>();
        List<Clause> right = new ArrayList<>();
        List<Fact> facts = new ArrayList<>();
        for (String key : Order.merge(keys(before), keys(ours), keys(theirs))) {
            Clause was = before.clause(key).orElse(null);
            Clause one = ours.clause(key).orElse(null);
            Clause other = theirs.clause(key).orElse(null);
            if (words(one).equals(words(other)) || words(other).equals(words(was))) {
                add(left, spaced(one, was, other));
                add(right, spaced(one, was, other));
            } else if (words(one).equals(words(was))) {
                add(left, spaced(other, was, one));
                add(right, spaced(other, was, one));
            } else {
                add(left, one);
                add(right, other);
                facts.add(Fact.of(was, one, other));
            }
        }
        String brace = brace(before, ours, theirs);
        String rest = rest(before, ours, theirs);
        String end = Three.of(before.end(), ours.end(), theirs.end());
        return new LineMerge(new ClauseLine(left, brace, rest, end), new ClauseLine(right, brace, rest, end),
                List.copyOf(facts));
    }

    private static List<String> keys(ClauseLine line) {
        return line.clauses().stream().map(Clause::key).toList();
    }

    private static String words(Clause clause) {
        return clause == null ? "" : clause.words();
    }

    /** A clause that one side alone changed, with the white space of the side that changed that. */
    private static Clause spaced(Clause taken, Clause was, Clause other) {
        if (taken == null || was == null || other == null) {
            return taken;
        }
        String text = taken.words().equals(other.words()) ? Three.of(was.text(), taken.text(), other.text())
                : taken.text();
        return new Clause(taken.key(), Three.of(was.space(), taken.space(), other.space()), text, taken.words());
    }

    /** Adds a clause; the members of a list have commas between them and none before the first one. */
    private static void add(List<Clause> line, Clause clause) {
        if (clause == null) {
            return;
        }
        boolean follows = !line.isEmpty() && clause.isListed() && line.getLast().isListed();
        boolean comma = clause.space().contains(",");
        String space = follows == comma ? clause.space() : follows ? ", " : clause.isListed() ? " " : clause.space();
        line.add(new Clause(clause.key(), space, clause.text(), clause.words()));
    }

    private static String brace(ClauseLine base, ClauseLine ours, ClauseLine theirs) {
        return Three.of(base.brace(), ours.brace(), theirs.brace());
    }

    /** Comments are no facts: two that differ are both kept. */
    private static String rest(ClauseLine base, ClauseLine ours, ClauseLine theirs) {
        if (Objects.equals(ours.rest(), theirs.rest()) || Objects.equals(theirs.rest(), base.rest())) {
            return ours.rest();
        }
        if (Objects.equals(ours.rest(), base.rest()) || ours.rest().isBlank()) {
            return theirs.rest();
        }
        return theirs.rest().isBlank() ? ours.rest() : ours.rest().stripTrailing() + "  " + theirs.rest().strip();
    }
}
