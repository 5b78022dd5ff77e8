// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.act;

import java.util.List;
import java.util.Optional;
import org.loomwright.harness.TextEdit;
import org.loomwright.rules.Finding;

/**
 * A change that somebody may choose.
 *
 * @param title   what it does, a few words
 * @param edits   the change
 * @param finding what it mends; empty where it mends nothing
 * @param certain false when it is a guess that a person has to look at
 */
public record Action(String title, List<TextEdit> edits, Optional<Finding> finding, boolean certain) {

    public Action {
        edits = List.copyOf(edits);
    }

    /** Whether it mends nothing but accepts the finding: none of the finding's own changes. */
    public boolean accepts() {
        return finding.filter(of -> of.fixes().stream().noneMatch(fix -> fix.edits().equals(edits))).isPresent();
    }
}
