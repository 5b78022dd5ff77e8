// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.loomwright.harness.Part;

/** The colour codes that a project knows: those of IEC 60757, and what its catalogues add. */
public final class Colours {

    /** IEC 60757:2021, in the order of its table; green-yellow is {@code GNYE} there. */
    public static final List<String> IEC_60757 = List.of("BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH",
            "PK", "GD", "TQ", "SR", "GNYE");

    private static final List<String> NAMES = List.of("black", "brown", "red", "orange", "yellow", "green", "blue",
            "violet", "grey", "white", "pink", "gold", "turquoise", "silver", "green-yellow");

    private Colours() {
    }

    /** The name of a code of the standard; empty for another code. */
    public static String nameOf(String code) {
        int at = IEC_60757.indexOf(code);
        return at < 0 ? "" : NAMES.get(at);
    }

    /** The codes of the standard and those that some parts add. */
    public static Set<String> known(Collection<Part> parts) {
        Set<String> codes = new TreeSet<>(IEC_60757);
        parts.stream().filter(part -> part.kind() == Part.Kind.COLOUR).forEach(part -> codes.add(part.name().text()));
        return codes;
    }
}
