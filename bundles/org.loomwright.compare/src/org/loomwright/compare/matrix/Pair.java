// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.Map;
import java.util.Optional;
import org.loomwright.quantity.Length;

/**
 * What differs between two drawings.
 *
 * @param left     the column further left
 * @param right    the other one
 * @param elements number of elements of which anything differs, one entry for each section, 0 for none
 * @param lengths  number of lengths that differ, or that one of the two does not have
 * @param largest  the largest difference between two known lengths of one kind, both as made or both along the
 *                 path; empty when there is none
 */
public record Pair(int left, int right, Map<Section, Integer> elements, int lengths, Optional<Largest> largest) {

    public Pair {
        elements = Map.copyOf(elements);
    }

    /**
     * A difference of two lengths.
     *
     * @param row        index of the row in the matrix
     * @param difference the right one less the left one
     */
    public record Largest(int row, Length difference) {
    }

    /** True when the two say the same of everything. */
    public boolean isEqual() {
        return elements.values().stream().allMatch(number -> number == 0);
    }
}
