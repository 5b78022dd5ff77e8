// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.rules.Finding;

/**
 * Findings about an earlier text of a file, moved to where they stand in a later one. What lies in the stretch that
 * changed is dropped: until it is checked again, nobody knows. One change between two texts; O(text + findings).
 */
final class Shifted {

    private final String file;
    private final int from;
    private final int oldEnd;
    private final int by;
    private final LineIndex lines;

    private Shifted(String file, int from, int oldEnd, int by, LineIndex lines) {
        this.file = file;
        this.from = from;
        this.oldEnd = oldEnd;
        this.by = by;
        this.lines = lines;
    }

    /** The change from one text to another. */
    static Shifted between(String file, String old, String now) {
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
        return new Shifted(file, head, old.length() - tail, now.length() - old.length(), new LineIndex(file, now));
    }

    /** The findings that still stand, moved. */
    List<Finding> of(List<Finding> findings) {
        List<Finding> moved = new ArrayList<>(findings.size());
        for (Finding finding : findings) {
            moved(finding).ifPresent(moved::add);
        }
        return moved;
    }

    private Optional<Finding> moved(Finding finding) {
        boolean elsewhere = !finding.place().span().file().equals(file)
                && finding.related().stream().noneMatch(label -> label.span().file().equals(file))
                && finding.fixes().stream().flatMap(fix -> fix.edits().stream())
                        .noneMatch(edit -> edit.span().file().equals(file));
        if (elsewhere) {
            return Optional.of(finding);
        }
        Optional<Span> place = moved(finding.place().span());
        if (place.isEmpty()) {
            return Optional.empty();
        }
        List<Finding.Label> related = finding.related().stream().flatMap(label -> moved(label.span())
                .map(span -> new Finding.Label(span, label.text())).stream()).toList();
        List<Finding.Fix> fixes = finding.fixes().stream().flatMap(fix -> moved(fix).stream()).toList();
        return Optional.of(new Finding(finding.rule(), finding.severity(), finding.inherited(), finding.element(),
                finding.subject(), finding.sentence(), finding.derivation(), finding.basis(), finding.affected(),
                new Finding.Label(place.get(), finding.place().text()), related, finding.advice(), fixes,
                finding.acceptance(), finding.fingerprint()));
    }

    private Optional<Finding.Fix> moved(Finding.Fix fix) {
        List<TextEdit> edits = new ArrayList<>();
        for (TextEdit edit : fix.edits()) {
            Optional<Span> span = moved(edit.span());
            if (span.isEmpty()) {
                return Optional.empty();
            }
            edits.add(new TextEdit(span.get(), edit.text()));
        }
        return Optional.of(new Finding.Fix(fix.title(), edits, fix.certain()));
    }

    private Optional<Span> moved(Span span) {
        if (!span.file().equals(file) || span.end() < from) {
            return Optional.of(span);
        }
        if (span.offset() < from && span.end() > oldEnd) {
            Span around = lines.span(span.offset(), span.length() + by);
            return lines.line(around.end()) > around.line() ? Optional.of(around) : Optional.empty();
        }
        return span.offset() > oldEnd ? Optional.of(lines.span(span.offset() + by, span.length()))
                : Optional.empty();
    }
}
