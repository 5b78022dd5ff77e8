// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The documents of a set, by their trade names, in the order of a set. */
public enum SheetKind {
    COVER("cover"),
    APPLICATION("application"),
    INSTALLATION("installation"),
    PARTS("parts-and-bags"),
    TAGS("tags-and-labels"),
    WIRE_LIST("wire-list"),
    CRIMPS("crimp-and-splice"),
    FORMBOARD("formboard"),
    END_VIEWS("end-views"),
    CIRCUITS("circuit-diagrams"),
    CONTINUITY("continuity"),
    TRAVELLER("traveller");

    private final String word;

    SheetKind(String word) {
        this.word = word;
    }

    /** The document of that name. */
    public static Optional<SheetKind> of(String word) {
        return Arrays.stream(values()).filter(each -> each.word.equals(word)).findFirst();
    }

    /** All names, in order. */
    public static List<String> words() {
        return Arrays.stream(values()).map(SheetKind::word).toList();
    }

    /** Its name. */
    public String word() {
        return word;
    }
}
