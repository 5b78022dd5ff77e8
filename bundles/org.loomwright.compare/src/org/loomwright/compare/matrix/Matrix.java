// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.List;
import java.util.Set;

/**
 * Drawings side by side. Immutable; says nothing of how it is shown.
 *
 * @param name     the position that the drawings fill, or another name for what they have in common
 * @param columns  the drawings
 * @param rows     the facts, section by section, element by element
 * @param pairs    what differs between each two drawings: the first with all others, the second with those after it ...
 * @param compared how many pairs of elements were weighed against each other; a measure of the work
 */
public record Matrix(String name, List<Column> columns, List<Row> rows, List<Pair> pairs, long compared) {

    public Matrix {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        pairs = List.copyOf(pairs);
    }

    /** The rows of some sections, all of them or only those in which drawings differ. */
    public List<Row> rows(Set<Section> sections, boolean onlyDifferences) {
        return rows.stream().filter(row -> sections.contains(row.section()))
                .filter(row -> !onlyDifferences || !row.isEqual()).toList();
    }
}
