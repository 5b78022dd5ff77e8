// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.Severity;

/**
 * How many findings there are of each sort.
 *
 * @param errors    that count
 * @param warnings  that count
 * @param notes     that count
 * @param inherited about what the factory did
 * @param accepted  by a person
 * @param setAside  by the practice of the project
 * @param known     that were there before and are set aside
 */
public record Tally(int errors, int warnings, int notes, int inherited, int accepted, int setAside, int known) {

    /** Counts a report. */
    public static Tally of(Report report) {
        int[] count = new int[Severity.values().length];
        int inherited = 0;
        int accepted = 0;
        int setAside = 0;
        for (Finding finding : report.findings()) {
            if (finding.counts()) {
                count[finding.severity().ordinal()]++;
            } else if (finding.inherited()) {
                inherited++;
            } else if (finding.acceptance().filter(each -> each.how() == Finding.Acceptance.How.SET_ASIDE)
                    .isPresent()) {
                setAside++;
            } else {
                accepted++;
            }
        }
        return new Tally(count[Severity.ERROR.ordinal()], count[Severity.WARNING.ordinal()],
                count[Severity.NOTE.ordinal()], inherited, accepted, setAside, 0);
    }

    /** Returns the same with a number of known findings. */
    Tally knowing(int findings) {
        return new Tally(errors, warnings, notes, inherited, accepted, setAside, findings);
    }

    /** Returns both together. */
    public Tally and(Tally other) {
        return new Tally(errors + other.errors, warnings + other.warnings, notes + other.notes,
                inherited + other.inherited, accepted + other.accepted,
                setAside + other.setAside, known + other.known);
    }

    /** {@code 2 errors, 1 warning, 3 notes}; {@code no findings}. Says nothing of what does not count. */
    public String words() {
        List<String> words = new ArrayList<>();
        add(words, errors, "error");
        add(words, warnings, "warning");
        add(words, notes, "note");
        return words.isEmpty() ? "no findings" : String.join(", ", words);
    }

    /** {@code not counted: 12 inherited (--inherited), 1 accepted (--accepted), 3 known (--all)}; empty for none. */
    public String uncounted() {
        List<String> words = new ArrayList<>();
        if (inherited > 0) {
            words.add(inherited + " inherited (--inherited)");
        }
        if (accepted > 0) {
            words.add(accepted + " accepted (--accepted)");
        }
        if (setAside > 0) {
            words.add(setAside + " set aside by the practice (--accepted)");
        }
        if (known > 0) {
            words.add(known + " known (--all)");
        }
        return words.isEmpty() ? "" : "not counted: " + String.join(", ", words);
    }

    private static void add(List<String> words, int count, String what) {
        if (count > 0) {
            words.add(count + " " + what + (count == 1 ? "" : "s"));
        }
    }
}
