// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.act;

import java.util.List;
import java.util.Optional;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.TextEdit;
import org.loomwright.ide.project.Moment;
import org.loomwright.rules.Finding;

/** Writes the waiver of a finding, with the reason left to be filled in. */
final class Acceptance {

    private static final String REASON = "say why";

    private Acceptance() {
    }

    /** A waiver at the end of the file; empty for a problem of the text, which nobody can accept. */
    static Optional<Action> of(Moment moment, Finding finding) {
        String element = finding.element();
        if (finding.basis().isEmpty() || element.isEmpty()) {
            return Optional.empty();
        }
        String file = finding.place().span().file();
        String text = moment.text(file);
        String gap = text.isEmpty() || text.endsWith("\n\n") ? "" : text.endsWith("\n") ? "\n" : "\n\n";
        String when = finding.affected().filter(affected -> !affected.every() && !affected.bounded()
                && affected.condition().isPresent()).map(affected -> " when " + affected.words()).orElse("");
        String line = gap + "waive " + finding.rule() + " on " + element + " because \"" + REASON + "\"" + when + "\n";
        return Optional.of(new Action("accept " + finding.rule() + " here, with a reason", List.of(new TextEdit(
                new LineIndex(file, text).span(text.length(), 0), line)), Optional.of(finding), false));
    }
}
