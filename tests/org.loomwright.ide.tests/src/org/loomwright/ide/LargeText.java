// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

/** Long texts. */
public final class LargeText {

    private static final int LINES_OF_A_DRAWING = 69;

    private LargeText() {
    }

    /** A project in one file with about so many lines, without a problem in text or names. */
    public static String of(int lines) {
        StringBuilder text = new StringBuilder("platform p {\n    years 1964 .. 1971\n    option heater\n"
                + "    place box\n    place end\n}\ncatalogue c {\n    housing block {\n        cavities 1 .. 40\n    }\n"
                + "}\n");
        for (int d = 0; d * LINES_OF_A_DRAWING < lines; d++) {
            text.append("drawing d").append(d).append(" of p when year = ").append(1964 + d % 8)
                    .append(" {\n    datum box\n    trunk main {\n        breakout out at 300 mm\n    }\n")
                    .append("    branch b from out to end 100 mm\n")
                    .append("    connector A at box is block\n    connector B on b is block\n");
            for (int w = 0; w < 20; w++) {
                text.append("    circuit ").append(w).append(" BK {\n        wire a 18 ga from A:").append(w + 1)
                        .append(" to B:").append(w + 1).append(w % 3 == 0 ? " when heater\n" : "\n").append("    }\n");
            }
            text.append("}\n");
        }
        return text.toString();
    }
}
