// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import org.loomwright.rules.Finding;

/**
 * Which findings are printed. Those that count always are.
 *
 * @param inherited true to print what is about the factory's work too
 * @param accepted  true to print what somebody accepted too
 */
public record Shown(boolean inherited, boolean accepted) {

    /** Whether a finding is printed. */
    public boolean shows(Finding finding) {
        return finding.counts() || finding.inherited() && inherited
                || !finding.inherited() && finding.acceptance().isPresent() && accepted;
    }
}
