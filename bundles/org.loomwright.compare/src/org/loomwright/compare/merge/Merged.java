// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.List;

/**
 * A merged file.
 *
 * @param text      the text; where there are conflicts both sides stand in it between marks
 * @param conflicts the conflicts, in the order of the text
 */
public record Merged(String text, List<MergeConflict> conflicts) {

    public Merged {
        conflicts = List.copyOf(conflicts);
    }
}
