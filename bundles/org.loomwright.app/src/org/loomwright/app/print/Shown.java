// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.List;
import org.loomwright.app.Checked;
import org.loomwright.rules.Finding;

/**
 * Which findings are printed. Those that count always are.
 *
 * @param inherited true to print what is about the factory's work too
 * @param accepted  true to print what somebody accepted too
 * @param known     true to print what was there before and is set aside too
 */
public record Shown(boolean inherited, boolean accepted, boolean known) {

    /** Whether a finding that was not set aside is printed. */
    public boolean shows(Finding finding) {
        return finding.counts() || finding.inherited() && inherited
                || !finding.inherited() && finding.acceptance().isPresent() && accepted;
    }

    /** What is printed of a project, in order. */
    public List<Finding> of(Checked checked) {
        return checked.all().findings().stream()
                .filter(finding -> checked.isKnown(finding) ? known : shows(finding)).toList();
    }
}
