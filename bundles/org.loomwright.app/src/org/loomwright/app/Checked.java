// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;

/**
 * A project after a check: all that is printed about it, and nothing that only checking needs.
 *
 * @param place    where the project is
 * @param contents how much there is in it
 * @param texts    the texts of its files
 * @param all      what was found, known findings included
 * @param known    fingerprints of the findings that count but were there before; they are set aside
 */
public record Checked(ProjectPlace place, Contents contents, Texts texts, Report all, Set<String> known) {

    public Checked {
        known = Set.copyOf(known);
    }

    /** A project that was just checked, with nothing known. */
    public static Checked of(Opened opened, Report report) {
        return new Checked(opened.place(), Contents.of(opened.project()),
                Texts.of(opened.project().everySource()), report, Set.of());
    }

    /**
     * Returns whether a finding may be set aside as known: one that counts, and that is no problem of the text, behind
     * which anything may hide.
     */
    public static boolean canBeKnown(Finding finding) {
        return finding.counts() && !finding.basis().isEmpty();
    }

    /** Returns the same with those findings set aside that were there before and that {@link #canBeKnown}. */
    public Checked settingAside(Predicate<Finding> before) {
        Set<String> more = new HashSet<>(known);
        all.findings().stream().filter(Checked::canBeKnown).filter(before).map(Finding::fingerprint)
                .forEach(more::add);
        return new Checked(place, contents, texts, all, more);
    }

    /** Returns the same with the findings of these fingerprints set aside. */
    public Checked settingAside(Collection<String> fingerprints) {
        Set<String> before = Set.copyOf(fingerprints);
        return settingAside(finding -> before.contains(finding.fingerprint()));
    }

    /** Returns whether a finding was set aside. */
    public boolean isKnown(Finding finding) {
        return known.contains(finding.fingerprint());
    }

    /** Returns what was found, without what was set aside: this decides the outcome. */
    public Report report() {
        if (known.isEmpty()) {
            return all;
        }
        List<Finding> rest = all.findings().stream().filter(finding -> !isKnown(finding)).toList();
        return new Report(rest, all.work());
    }

    /** Returns how many findings there are of each sort. */
    public Tally tally() {
        return Tally.of(report()).knowing(known.size());
    }
}
