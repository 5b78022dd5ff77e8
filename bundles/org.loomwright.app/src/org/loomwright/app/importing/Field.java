// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.importing;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What a column of a wire list can be. */
public enum Field {
    CIRCUIT("circuit", true, "circuit", "circuit number", "cct", "net"),
    TITLE("function", false, "function", "title", "description", "name"),
    COLOUR("colour", false, "colour", "color", "col"),
    WIRE("wire", false, "wire", "wire number", "wire id", "no", "number"),
    SIZE("size", true, "size", "gauge", "section", "awg", "mm2"),
    FROM("from", true, "from", "start", "end 1", "from pin"),
    TO("to", true, "to", "end", "end 2", "to pin"),
    LENGTH("length", false, "length", "cut length");

    private final String words;
    private final boolean needed;
    private final List<String> headings;

    Field(String words, boolean needed, String... headings) {
        this.words = words;
        this.needed = needed;
        this.headings = List.of(headings);
    }

    /** The words for people. */
    public String words() {
        return words;
    }

    /** Whether no wire can be made without it. */
    public boolean isNeeded() {
        return needed;
    }

    /** For each field the column whose heading says so, the first of several; fields without one are left out. */
    public static Map<Field, Integer> guess(List<String> heads) {
        Map<Field, Integer> columns = new EnumMap<>(Field.class);
        for (Field field : values()) {
            for (int i = heads.size() - 1; i >= 0; i--) {
                if (field.headings.contains(heads.get(i).toLowerCase(Locale.ROOT).strip())) {
                    columns.put(field, i);
                }
            }
        }
        return columns;
    }
}
