// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a check found.
 *
 * @param findings all of them, the inherited and the accepted ones included, ordered by file, place, rule and element
 * @param work     how much was done
 */
public record Report(List<Finding> findings, Work work) {

    /**
     * Counters of work, for tests that guard its growth; no clock is read.
     *
     * @param targets things looked at
     * @param checks  calls of rules
     * @param drafts  findings before equal ones were joined
     */
    public record Work(long targets, long checks, long drafts) {
    }

    public Report {
        findings = List.copyOf(findings);
    }

    /** Returns the findings that count. */
    public List<Finding> counting() {
        return findings.stream().filter(Finding::counts).toList();
    }

    /** Returns whether something counts and weighs at least that much. */
    public boolean objects(Severity threshold) {
        return findings.stream().anyMatch(finding -> finding.counts() && finding.severity().atLeast(threshold));
    }

    /** Returns the greatest weight of what counts; empty when nothing does. */
    public Optional<Severity> worst() {
        return counting().stream().map(Finding::severity).max(Comparator.naturalOrder());
    }

    /** Returns the findings of one rule. */
    public List<Finding> of(String rule) {
        return findings.stream().filter(finding -> finding.rule().equals(rule)).toList();
    }
}
