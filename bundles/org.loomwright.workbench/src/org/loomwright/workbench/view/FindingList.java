// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.Comparator;
import java.util.List;
import org.loomwright.app.Tally;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.truth.Truth;

/**
 * Findings for some vehicles.
 *
 * @param findings the worst first, else in the order of the sources
 * @param words    how many there are, and for whom
 */
public record FindingList(List<Finding> findings, String words) {

    public FindingList {
        findings = List.copyOf(findings);
    }

    /** Takes from what was found what holds for one of the chosen vehicles, or is about no vehicles. */
    static FindingList of(Truth truth, Choice choice, boolean inherited, boolean accepted) {
        List<Finding> shown = truth.report().findings().stream()
                .filter(finding -> finding.counts() || finding.inherited() && inherited
                        || !finding.inherited() && finding.acceptance().isPresent() && accepted)
                .filter(finding -> finding.affected().flatMap(Finding.Affected::condition)
                        .map(condition -> choice.touches(condition, truth.project())).orElse(true))
                .sorted(Comparator.comparing(Finding::severity).reversed()).toList();
        Tally tally = Tally.of(new Report(shown, new Report.Work(0, 0, 0)));
        return new FindingList(shown, (shown.isEmpty() ? "Nothing to object to" : tally.words()) + " for "
                + choice.words() + ".");
    }

    /** {@code error}, {@code warning (inherited)}. */
    static String weight(Finding finding) {
        return finding.severity().words() + (finding.inherited() ? " (inherited)"
                : finding.acceptance().map(each -> " (" + each.how().words() + ")").orElse(""));
    }

    /** All that is known of a finding, in lines. */
    static String details(Finding finding) {
        StringBuilder text = new StringBuilder(finding.sentence()).append(".\n");
        finding.affected().ifPresent(each -> text.append("\nVehicles: ").append(each.words()).append(", ")
                .append(each.tally()).append('\n'));
        if (!finding.derivation().isEmpty()) {
            text.append("\nHow the figures came about:\n");
            finding.derivation().forEach(step -> text.append("  ").append(step).append('\n'));
        }
        finding.related().forEach(label -> text.append("\nAlso: ").append(label.span().at()).append(' ')
                .append(label.text()).append('\n'));
        finding.acceptance().ifPresent(each -> text.append("\nAccepted: ").append(each.reason()).append('\n'));
        if (!finding.advice().isEmpty()) {
            text.append("\nTry: ").append(finding.advice()).append('\n');
        }
        if (!finding.basis().isEmpty()) {
            text.append("\nBasis: ").append(finding.basis()).append('\n');
        }
        return text.toString();
    }
}
