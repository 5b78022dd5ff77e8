// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.compare.matrix.Pair.Largest;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;

/** Sums up what differs between each two columns. */
final class Pairs {

    private final List<Row> rows;
    private final List<List<Integer>> groups;

    Pairs(List<Row> rows) {
        this.rows = rows;
        groups = rows.stream().map(Row::groups).toList();
    }

    List<Pair> all(int columns, Cancel cancel) {
        List<Pair> pairs = new ArrayList<>();
        for (int left = 0; left < columns; left++) {
            cancel.check();
            for (int right = left + 1; right < columns; right++) {
                pairs.add(pair(left, right));
            }
        }
        return pairs;
    }

    private Pair pair(int left, int right) {
        Map<Section, Set<Integer>> subjects = new EnumMap<>(Section.class);
        for (Section section : Section.values()) {
            subjects.put(section, new HashSet<>());
        }
        int lengths = 0;
        Optional<Largest> largest = Optional.empty();
        for (int i = 0; i < rows.size(); i++) {
            if (groups.get(i).get(left).equals(groups.get(i).get(right))) {
                continue;
            }
            Row row = rows.get(i);
            subjects.get(row.section()).add(row.subject());
            lengths += row.cells().stream().flatMap(cell -> cell.values().stream())
                    .anyMatch(value -> value.length().isPresent()) ? 1 : 0;
            Optional<Length> from = row.cells().get(left).length();
            Optional<Length> to = row.cells().get(right).length();
            if (from.isPresent() && to.isPresent()
                    && row.cells().get(left).isPath() == row.cells().get(right).isPath()) {
                Length difference = to.get().minus(from.get());
                if (largest.isEmpty() ? !difference.isZero()
                        : difference.abs().compareTo(largest.get().difference().abs()) > 0) {
                    largest = Optional.of(new Largest(i, difference));
                }
            }
        }
        Map<Section, Integer> elements = new EnumMap<>(Section.class);
        subjects.forEach((section, differing) -> elements.put(section, differing.size()));
        return new Pair(left, right, elements, lengths, largest);
    }
}
