// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.harness.clause.ClauseLine;

/** Writes the result. Linear in its length. */
final class Writing {

    private static final String CRLF = "\r\n";

    private final Marks marks;
    private final String end;
    private final boolean turnsOurs;
    private final boolean turnsTheirs;
    private final StringBuilder out = new StringBuilder();
    private final List<MergeConflict> conflicts = new ArrayList<>();
    private int lines = 1;
    private int counted;

    private Writing(Marks marks, String base, String ours, String theirs) {
        this.marks = marks;
        String then = usualEnd(base);
        String one = usualEnd(ours);
        String other = usualEnd(theirs);
        this.end = Three.of(then, one, other);
        this.turnsOurs = one.equals(then) && !other.equals(one);
        this.turnsTheirs = other.equals(then) && !one.equals(other);
    }

    static Merged of(Twin file, Marks marks, String base, String ours, String theirs) {
        Writing writing = new Writing(marks, base, ours, theirs);
        writing.out.append(Three.of(file.base.head.text(), file.ours.head.text(), file.theirs.head.text()));
        file.children.forEach(writing::twin);
        writing.put(Three.notes(file.base.tail, file.ours.tail, file.theirs.tail));
        return new Merged(writing.out.toString(), writing.conflicts);
    }

    private static String usualEnd(String text) {
        long all = text.chars().filter(c -> c == '\n').count();
        long returns = text.chars().filter(c -> c == '\r').count();
        return all > 0 && returns * 2 > all ? CRLF : "\n";
    }

    private void twin(Twin twin) {
        if (twin.isTorn) {
            torn(twin);
        } else if (twin.isOnBothSides()) {
            both(twin);
        } else {
            one(twin, twin.any(), twin.ours != null ? turnsOurs : turnsTheirs);
        }
    }

    /** What one side alone has. */
    private void one(Twin twin, TextNode node, boolean turns) {
        put(turned(node.lead, turns));
        put(turned(node.head.text(), turns));
        twin.children.forEach(this::twin);
        put(turned(node.tail + node.close, turns));
    }

    private void both(Twin twin) {
        ClauseLine base = twin.base == null ? null : twin.base.head;
        put(twin.base == null ? Three.notes("", twin.ours.lead, twin.theirs.lead)
                : Three.notes(twin.base.lead, twin.ours.lead, twin.theirs.lead));
        LineMerge merged = LineMerge.of(base, twin.ours.head, twin.theirs.head);
        ClauseLine ours = opening(merged.ours(), twin);
        if (merged.isClean()) {
            put(ours.text());
        } else {
            int line = begin();
            put(ours.text());
            mark(marks.middle());
            put(opening(merged.theirs(), twin).text());
            mark(marks.end());
            merged.facts().forEach(fact -> note(twin, fact, line));
        }
        twin.children.forEach(this::twin);
        if (ours.opens()) {
            closing(twin);
        }
    }

    /** A line that opens a block when there is something to stand in it. */
    private static ClauseLine opening(ClauseLine line, Twin twin) {
        if (line.opens() || twin.children.isEmpty()) {
            return line;
        }
        String brace = twin.ours.head.opens() ? twin.ours.head.brace() : twin.theirs.head.brace();
        return new ClauseLine(line.clauses(), brace.isEmpty() ? " {" : brace, line.rest(), line.end());
    }

    private void closing(Twin twin) {
        String tail = twin.base == null ? Three.notes("", twin.ours.tail, twin.theirs.tail)
                : Three.notes(twin.base.tail, twin.ours.tail, twin.theirs.tail);
        String close = twin.base == null ? twin.ours.close
                : Three.of(twin.base.close, twin.ours.close, twin.theirs.close);
        put(tail);
        put(!close.isEmpty() ? close : twin.ours.close.isEmpty() ? twin.theirs.close : twin.ours.close);
    }

    private void note(Twin twin, LineMerge.Fact fact, int line) {
        TextNode node = twin.any();
        boolean isFact = node.head.isFact() && !node.parent.isFile();
        conflicts.add(new MergeConflict(isFact ? node.parent.label() : node.label(), fact.word(), fact.base(),
                fact.ours(), fact.theirs(), line));
    }

    /** One side removed what the other changed: it stands between the marks as the other has it. */
    private void torn(Twin twin) {
        TextNode node = twin.any();
        boolean isOurs = twin.ours != null;
        put(turned(node.lead, isOurs ? turnsOurs : turnsTheirs));
        int line = begin();
        if (!isOurs) {
            mark(marks.middle());
        }
        put(turned(node.head.text(), isOurs ? turnsOurs : turnsTheirs));
        node.children.forEach(child -> whole(child, isOurs));
        put(turned(node.tail + node.close, isOurs ? turnsOurs : turnsTheirs));
        if (isOurs) {
            mark(marks.middle());
        }
        mark(marks.end());
        conflicts.add(new MergeConflict(node.label(), "as a whole", "there", isOurs ? "changed" : "removed",
                isOurs ? "removed" : "changed", line));
    }

    /** A line with its block, but for what the other side moved elsewhere. */
    private void whole(TextNode node, boolean isOurs) {
        boolean elsewhere = node.twin.isOnBothSides() && node.twin.home != node.parent.twin;
        if (!elsewhere) {
            put(turned(node.lead + node.head.text(), isOurs ? turnsOurs : turnsTheirs));
            node.children.forEach(child -> whole(child, isOurs));
            put(turned(node.tail + node.close, isOurs ? turnsOurs : turnsTheirs));
        }
    }

    private int begin() {
        mark(marks.begin());
        return line() - 1;
    }

    private void mark(String words) {
        put(words + end);
    }

    private int line() {
        for (; counted < out.length(); counted++) {
            lines += out.charAt(counted) == '\n' ? 1 : 0;
        }
        return lines;
    }

    private String turned(String text, boolean turns) {
        return turns ? text.replace(CRLF, "\n").replace("\n", end) : text;
    }

    /** Appends whole lines; a line that was the last one of its version gets an end when another follows. */
    private void put(String text) {
        if (!text.isEmpty()) {
            boolean begun = !out.isEmpty() && out.charAt(out.length() - 1) != '\n'
                    && !(out.length() == 1 && out.charAt(0) == '\ufeff');
            out.append(begun ? end : "").append(text);
        }
    }
}
