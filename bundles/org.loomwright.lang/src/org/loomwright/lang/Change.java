// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Element;
import org.loomwright.harness.Span;
import org.loomwright.harness.Wiring;

/**
 * The stretch in which two texts differ, and what of the old one's elements it lies in. O(text).
 *
 * @param old  the old text
 * @param now  the new text
 * @param from where they begin to differ
 * @param to   where they cease to, in the old text
 */
record Change(String old, String now, int from, int to) {

    /**
     * Whole lines of the old text that hold the change.
     *
     * @param from  where they start, in both texts
     * @param to    where they end, in the old text
     * @param line  the number of the first
     * @param first the first of the things that start in them
     * @param past  the one behind the last of them
     */
    record Stretch(int from, int to, int line, int first, int past) {
    }

    static Change between(String old, String now) {
        int shorter = Math.min(old.length(), now.length());
        int head = 0;
        while (head < shorter && old.charAt(head) == now.charAt(head)) {
            head++;
        }
        int tail = 0;
        while (tail < shorter - head
                && old.charAt(old.length() - 1 - tail) == now.charAt(now.length() - 1 - tail)) {
            tail++;
        }
        return new Change(old, now, head, old.length() - tail);
    }

    /** By how many characters the new text is longer. */
    int by() {
        return now.length() - old.length();
    }

    /** By how many lines the new text is longer. */
    int lines() {
        return newLines(now, from, to + by()) - newLines(old, from, to);
    }

    private static int newLines(String text, int from, int to) {
        int lines = 0;
        for (int at = from; at < to; at++) {
            lines += text.charAt(at) == '\n' ? 1 : 0;
        }
        return lines;
    }

    /** What the lines of a stretch are in the new text. */
    String text(Stretch stretch) {
        return now.substring(stretch.from, stretch.to + by());
    }

    /** The elements that the change lies in, with what stands between them and the next one. */
    Stretch elements(List<Element> elements) {
        int start = 0;
        int line = 1;
        int first = 0;
        for (int i = 0; i < elements.size(); i++) {
            Span span = elements.get(i).span();
            OptionalInt at = lineStart(span);
            if (at.isEmpty()) {
                continue;
            }
            if (at.getAsInt() > to) {
                return new Stretch(start, at.getAsInt(), line, first, i);
            }
            if (at.getAsInt() < from) {
                start = at.getAsInt();
                line = span.line();
                first = i;
            }
        }
        return new Stretch(start, old.length(), line, first, elements.size());
    }

    /** The circuit of a drawing or harness that the change lies in, with blank lines behind it. */
    Optional<Stretch> circuit(Wiring wiring) {
        List<Circuit> circuits = wiring.circuits();
        for (int i = 0; i < circuits.size(); i++) {
            Span span = circuits.get(i).span();
            if (span.offset() >= from) {
                return Optional.empty();
            }
            int end = i + 1 < circuits.size() ? circuits.get(i + 1).span().offset() : wiring.span().end();
            if (to < end) {
                OptionalInt start = lineStart(span);
                OptionalInt stop = behind(span.end(), end);
                return start.isPresent() && start.getAsInt() < from && stop.isPresent() && to < stop.getAsInt()
                        ? Optional.of(new Stretch(start.getAsInt(), stop.getAsInt(), span.line(), i, i + 1))
                        : Optional.empty();
            }
        }
        return Optional.empty();
    }

    /** The start of the line of a thing, if nothing stands before it. */
    private OptionalInt lineStart(Span span) {
        int start = span.offset() - span.column() + 1;
        return span.line() > 0 && start >= 0 && old.substring(start, span.offset()).isBlank() ? OptionalInt.of(start)
                : OptionalInt.empty();
    }

    /** The start of the first line behind a thing that holds something, if the thing has its last line for itself. */
    private OptionalInt behind(int end, int limit) {
        int next = old.indexOf('\n', end) + 1;
        if (next == 0 || next > limit || !old.substring(end, next).isBlank()) {
            return OptionalInt.empty();
        }
        for (int after = old.indexOf('\n', next) + 1; after > 0 && after <= limit
                && old.substring(next, after).isBlank(); after = old.indexOf('\n', next) + 1) {
            next = after;
        }
        return OptionalInt.of(next);
    }
}
