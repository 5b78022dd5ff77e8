// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.document;

import java.util.ArrayList;
import java.util.List;

/** One piece of a document, below the one before it. */
public sealed interface Block {

    /** A heading, kept with what follows. */
    record Heading(String text) implements Block {
    }

    /** A paragraph. */
    record Words(String text) implements Block {
    }

    /** Cautions in a frame of their own. */
    record Cautions(List<String> lines) implements Block {

        public Cautions {
            lines = List.copyOf(lines);
        }
    }

    /** Things to do, each with a box to tick and a number. */
    record Steps(List<String> lines) implements Block {

        public Steps {
            lines = List.copyOf(lines);
        }
    }

    /** A drawing at its own size; one that is too large for the page is shrunk. */
    record Picture(Drawing drawing, String caption) implements Block {
    }

    /** A drawing on a page of its own, never shrunk: it has to be as small as the room that the page leaves. */
    record Sheet(Drawing drawing) implements Block {
    }

    /** Ruled lines to write on. */
    record Lines(int count) implements Block {
    }

    /** Labels to cut out, three beside each other; the first line of each is its largest. */
    record Labels(List<List<String>> labels) implements Block {

        public Labels {
            labels = labels.stream().map(List::copyOf).toList();
        }
    }

    /** What follows begins on a new page. */
    record NewPage() implements Block {
    }

    /**
     * A table.
     *
     * @param name    what it is called in a file of tables
     * @param columns its columns
     * @param rows    its rows, each with as many cells as there are columns
     */
    record Grid(String name, List<Column> columns, List<Row> rows) implements Block {

        public Grid {
            columns = List.copyOf(columns);
            rows = List.copyOf(rows);
            for (Row row : rows) {
                if (row.cells().size() != columns.size()) {
                    throw new IllegalArgumentException("a row of " + row.cells().size() + " cells under "
                            + columns.size() + " headings: " + row);
                }
            }
        }
    }

    /**
     * The same block without a column that says the same in every row; a block that is no table, or in which the column
     * says more, as it is.
     */
    static Block without(Block block, String heading, String saying) {
        if (!(block instanceof Grid grid) || grid.columns().size() < 2) {
            return block;
        }
        for (int i = 0; i < grid.columns().size(); i++) {
            int at = i;
            if (grid.columns().get(i).heading().equals(heading) && grid.rows().stream().allMatch(each ->
                    each.strong() || each.cells().get(at).text().equals(saying))) {
                List<Column> columns = new ArrayList<>(grid.columns());
                columns.remove(at);
                return new Grid(grid.name(), columns, grid.rows().stream().map(each -> {
                    List<Cell> cells = new ArrayList<>(each.cells());
                    cells.remove(at);
                    return new Row(cells, each.strong());
                }).toList());
            }
        }
        return block;
    }

    /** A column: its heading, and whether its cells are figures, which stand at the right. */
    record Column(String heading, boolean figures) {

        /** A column of words. */
        public static Column of(String heading) {
            return new Column(heading, false);
        }

        /** A column of figures. */
        public static Column figures(String heading) {
            return new Column(heading, true);
        }
    }

    /** A row; a strong one is set apart from the others: a group's name or its total. */
    record Row(List<Cell> cells, boolean strong) {

        public Row {
            cells = List.copyOf(cells);
        }

        /** A row of words. */
        public static Row of(String... texts) {
            return new Row(List.of(texts).stream().map(Cell::of).toList(), false);
        }

        /** The same set apart. */
        public Row asStrong() {
            return new Row(cells, true);
        }
    }

    /**
     * A cell.
     *
     * @param text   what it says
     * @param colour code of a wire colour that is drawn before the text; empty for none
     * @param tick   true for an empty box to tick or to fill in
     */
    record Cell(String text, String colour, boolean tick) {

        /** Words alone. */
        public static Cell of(String text) {
            return new Cell(text, "", false);
        }

        /** A wire colour, drawn and written. */
        public static Cell colour(String code) {
            return new Cell(code, code, false);
        }

        /** A box to tick. */
        public static Cell box() {
            return new Cell("", "", true);
        }
    }
}
