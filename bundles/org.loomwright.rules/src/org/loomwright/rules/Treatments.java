// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Practice.Treatment;
import org.loomwright.harness.Practice.Weight;
import org.loomwright.harness.Problem;
import org.loomwright.harness.TextEdit;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Spelling;

/**
 * Lets findings weigh what the practice of a project says. Nothing is dropped: what a practice silences is kept as set
 * aside, and what it treats otherwise says so. A rule of errors cannot be silenced, and neither can a finding that is
 * an error although its rule's other findings are not.
 */
final class Treatments {

    private final Project project;
    private final RuleBook book;

    Treatments(Project project, RuleBook book) {
        this.project = project;
        this.book = book;
    }

    /** The findings as the practice of their platform treats them. */
    List<Finding> apply(List<Finding> findings) {
        if (project.practices().isEmpty()) {
            return findings;
        }
        return findings.stream().map(finding -> {
            Optional<RuleInfo> info = book.info(finding.rule());
            String owner = finding.element().split(":", 2)[0];
            Optional<Treatment> said = project.practice(owner).treatment(finding.rule());
            return info.isPresent() && said.isPresent() ? treat(finding, info.get(), said.get()) : finding;
        }).toList();
    }

    private static Finding treat(Finding finding, RuleInfo info, Treatment said) {
        if (said.weight() == Weight.SILENT) {
            boolean aside = finding.counts() && finding.severity() != Severity.ERROR
                    && info.severity() != Severity.ERROR;
            return aside ? Acceptances.with(finding, finding.affected(), Optional.of(new Finding.Acceptance(
                    Finding.Acceptance.How.SET_ASIDE, said.reason(), said.span()))) : finding;
        }
        Severity severity = severity(finding.severity(), info.severity(), Severity.valueOf(said.weight().name()));
        if (severity == finding.severity()) {
            return finding;
        }
        List<Finding.Label> related = new ArrayList<>(finding.related());
        related.add(new Finding.Label(said.span(), "treated as " + severity.words() + " here, not as "
                + finding.severity().words()));
        return new Finding(finding.rule(), severity, finding.inherited(), finding.element(), finding.subject(),
                finding.sentence(), finding.derivation(), finding.basis(), finding.affected(), finding.place(),
                related, finding.advice(), finding.fixes(), finding.acceptance(), finding.fingerprint());
    }

    /**
     * A rule treated as less than its own weight has no finding above it; one treated as more lifts what weighs as much
     * as the rule does, and leaves its mere remarks what they are.
     */
    static Severity severity(Severity finding, Severity rule, Severity treated) {
        boolean lifts = treated.compareTo(rule) > 0;
        if (lifts) {
            return finding.atLeast(rule) && treated.atLeast(finding) ? treated : finding;
        }
        return finding.atLeast(treated) ? treated : finding;
    }

    /** Treatments of rules that there are not, or that cannot be treated so. */
    List<Problem> problems() {
        List<Problem> problems = new ArrayList<>();
        for (Practice practice : project.practices()) {
            for (Treatment each : practice.treatments()) {
                String id = each.rule().text();
                Optional<RuleInfo> info = book.info(id);
                if (info.isEmpty() && !book.aside().contains(id)) {
                    problems.add(unknown(each));
                } else if (each.weight() == Weight.SILENT
                        && info.filter(rule -> rule.severity() == Severity.ERROR).isPresent()) {
                    problems.add(new Problem("error-silenced", each.span(), "what " + id
                            + " finds is an error, which a practice cannot silence",
                            "treat it as note, or waive it where it stands", List.of()));
                }
            }
        }
        return problems;
    }

    private Problem unknown(Treatment treatment) {
        TreeSet<String> known = new TreeSet<>(book.aside());
        book.infos().forEach(info -> known.add(info.id()));
        Optional<String> near = Spelling.nearest(treatment.rule().text(), known);
        return new Problem("rule-unknown", treatment.rule().span(), "there is no rule named \"" + treatment.rule()
                + "\"", near.map(text -> "did you mean \"" + text + "\"?")
                        .orElse("docs/rules lists those that there are"),
                near.map(text -> List.of(new TextEdit(treatment.rule().span(), text))).orElse(List.of()));
    }
}
