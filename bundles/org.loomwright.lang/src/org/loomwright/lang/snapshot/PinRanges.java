// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part.Pin;
import org.loomwright.harness.Span;
import org.loomwright.model.loom.PinRange;

/** Writes rows of pins out: {@code 1 .. 12}, {@code A1 .. A6}, {@code a .. f}. */
final class PinRanges {
    /** No housing has more cavities: common practice. */
    private static final int MOST = 500;
    private static final Pattern NUMBERED = Pattern.compile("([A-Za-z_]*)([0-9]{1,6})");

    private final FileText file;

    PinRanges(FileText file) {
        this.file = file;
    }

    /** Adds the pins of a row; a row that cannot be written out is reported and adds its first pin. */
    void expand(Written written, PinRange range, List<Pin> pins) {
        Name first = written.name("name");
        String title = FileText.orEmpty(range.getTitle());
        if (first.text().isEmpty()) {
            return;
        }
        String last = FileText.orEmpty(range.getUpTo());
        List<String> names = last.isEmpty() ? List.of(first.text()) : row(first.text(), last, written.span());
        for (String name : names) {
            pins.add(new Pin(new Name(name, name.equals(last) ? written.span("upTo") : first.span()), title));
        }
    }

    private List<String> row(String first, String last, Span span) {
        Matcher from = NUMBERED.matcher(first);
        Matcher to = NUMBERED.matcher(last);
        boolean numbered = from.matches() && to.matches() && from.group(1).equals(to.group(1));
        boolean letters = first.length() == 1 && last.length() == 1 && Character.isLetter(first.charAt(0))
                && Character.isLetter(last.charAt(0))
                && Character.isUpperCase(first.charAt(0)) == Character.isUpperCase(last.charAt(0));
        if (!numbered && !letters) {
            return reported("range-unreadable", first, span, first + " .. " + last + " is no row of pins",
                    "a row runs through numbers or letters: 1 .. 12, A1 .. A6, a .. f");
        }
        int start = numbered ? Integer.parseInt(from.group(2)) : first.charAt(0);
        int end = numbered ? Integer.parseInt(to.group(2)) : last.charAt(0);
        if (start > end) {
            return reported("range-reversed", first, span,
                    "the row of pins " + first + " .. " + last + " runs backwards",
                    "write the lower one first");
        }
        if (end - start >= MOST) {
            return reported("range-unreadable", first, span,
                    "a row of " + (end - start + 1L) + " pins is too long; " + MOST
                    + " are the most", "");
        }
        Optional<String> prefix = numbered ? Optional.of(from.group(1)) : Optional.empty();
        return IntStream.rangeClosed(start, end)
                .mapToObj(at -> prefix.map(head -> head + at).orElse(String.valueOf((char) at))).toList();
    }

    private List<String> reported(String code, String first, Span span, String message, String advice) {
        file.problems().add(code, span, message, advice);
        return List.of(first);
    }
}
