// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.page;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The sizes of paper that sheets are printed on: A4 and A3 of ISO 216, and Letter of ANSI/ASME Y14.1. */
public enum Paper {
    A4("A4", 210, 297),
    A3("A3", 297, 420),
    LETTER("letter", 215.9, 279.4);

    private final String word;
    private final double width;
    private final double height;

    Paper(String word, double width, double height) {
        this.word = word;
        this.width = width;
        this.height = height;
    }

    /** The paper of that name; capitals make no difference. */
    public static Optional<Paper> of(String word) {
        return Arrays.stream(values()).filter(each -> each.word.equalsIgnoreCase(word)).findFirst();
    }

    /** All names. */
    public static List<String> words() {
        return Arrays.stream(values()).map(Paper::word).toList();
    }

    /** Its name. */
    public String word() {
        return word;
    }

    /** Its short side in mm. */
    public double width() {
        return width;
    }

    /** Its long side in mm. */
    public double height() {
        return height;
    }
}
