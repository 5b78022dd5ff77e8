// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * One fact of one element in all drawings.
 *
 * @param section the part of the matrix
 * @param subject number of the element; rows of one element stand together and share it
 * @param title   words for the element: its title, else its name
 * @param part    the piece of the element that the fact is about, {@code J1:1 - S12} for a wire; empty for the whole
 * @param fact    what is stated: {@code colour}, {@code size}, {@code length}
 * @param cells   one for each column
 */
public record Row(Section section, int subject, String title, String part, String fact, List<Cell> cells) {

    /** The least number of drawings of which one can be the odd one out. */
    private static final int SEVERAL = 3;

    public Row {
        cells = List.copyOf(cells);
    }

    /** For each column a number; columns that say the same have the same one, counted from 0 at the left. */
    public List<Integer> groups() {
        Map<String, Integer> numbers = new HashMap<>();
        List<Integer> groups = new ArrayList<>(cells.size());
        for (Cell cell : cells) {
            Integer known = numbers.putIfAbsent(cell.sameness(), numbers.size());
            groups.add(known == null ? numbers.size() - 1 : known);
        }
        return List.copyOf(groups);
    }

    /** True when all drawings say the same. */
    public boolean isEqual() {
        return cells.stream().allMatch(cells.getFirst()::says);
    }

    /** The one column that differs while all others, two or more, say the same. */
    public OptionalInt outlier() {
        if (cells.size() < SEVERAL) {
            return OptionalInt.empty();
        }
        List<Integer> groups = groups();
        for (int i = 0; i < groups.size(); i++) {
            int own = groups.get(i);
            int other = groups.get(i == 0 ? 1 : 0);
            int at = i;
            if (own != other && IntStream.range(0, groups.size())
                    .allMatch(j -> j == at || groups.get(j) == other)) {
                return OptionalInt.of(i);
            }
        }
        return OptionalInt.empty();
    }
}
