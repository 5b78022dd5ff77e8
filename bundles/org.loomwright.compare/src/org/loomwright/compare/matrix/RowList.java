// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.loomwright.compare.matrix.RowMatcher.MatchedRow;

/** Collects the rows of a matrix. */
final class RowList {

    private final int columns;
    private final List<Row> rows = new ArrayList<>();
    private Section section = Section.CIRCUITS;
    private String title = "";
    private int subject = -1;

    RowList(int columns) {
        this.columns = columns;
    }

    /** Begins an element. */
    void element(Section of, String called) {
        section = of;
        title = called;
        subject++;
    }

    /** Adds a fact of the last element; one that no drawing states is left out. */
    <T> void add(String part, String fact, MatchedRow<T> matched, Function<Item<T>, Cell> cell) {
        List<Cell> cells = new ArrayList<>(columns);
        for (int i = 0; i < columns; i++) {
            cells.add(matched.item(i).map(cell).orElse(Cell.ABSENT));
        }
        if (!cells.stream().allMatch(Cell::isAbsent)) {
            rows.add(new Row(section, subject, title, part, fact, cells));
        }
    }

    /** The first text of the items that is not empty, else the name of the first one. */
    static <T> String title(MatchedRow<T> matched, Function<T, String> text) {
        return matched.items().stream().map(item -> text.apply(item.element())).filter(words -> !words.isEmpty())
                .findFirst().orElse(matched.items().getFirst().name());
    }

    List<Row> rows() {
        return List.copyOf(rows);
    }
}
