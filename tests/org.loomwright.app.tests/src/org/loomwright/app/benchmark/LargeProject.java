// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.benchmark;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.loomwright.app.load.Input;

/**
 * An invented project of any size: one platform, one catalogue, drawings that are alike but for their lengths, and a
 * harness that covers them all. The same numbers give the same bytes.
 */
final class LargeProject {

    private static final int CAVITIES = 12;
    private static final int FIRST_YEAR = 1960;
    private static final List<String> COLOURS = List.of("BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH",
            "PK", "TQ");

    private final int drawings;
    private final int circuits;
    private final int places;
    private final Random random = new Random(1200);

    /**
     * @param drawings how many drawings, at most 200: each is for one model year
     * @param wires    how many wires each has, rounded down to a multiple of three
     */
    LargeProject(int drawings, int wires) {
        this.drawings = drawings;
        circuits = wires / 3;
        places = (circuits * 3 + CAVITIES - 1) / CAVITIES;
    }

    List<Input> inputs() {
        List<Input> inputs = new ArrayList<>();
        inputs.add(input("catalogue.loom", catalogue()));
        for (int i = 0; i < drawings; i++) {
            int year = FIRST_YEAR + i;
            inputs.add(input("drawings/d" + year + ".loom", wiring("drawing d" + year + " \"Body " + year
                    + "\" of orrin fills body when year = " + year, "", random.nextInt(40))));
        }
        inputs.add(input("harness.loom", wiring("harness body \"Body\" of orrin fills body", covers(), 20)));
        inputs.add(input("platform.loom", platform()));
        return inputs;
    }

    private static Input input(String name, String text) {
        return Input.of(name, text.getBytes(StandardCharsets.UTF_8));
    }

    private String platform() {
        StringBuilder text = new StringBuilder("platform orrin \"Orrin 1200\" {\n    supply 12 V negative ground\n");
        text.append("    years ").append(FIRST_YEAR).append(" .. ").append(FIRST_YEAR + drawings - 1).append('\n');
        text.append("    group body of saloon, coupe, estate\n    option heater\n    upgrade fan\n");
        text.append("    zone cabin ambient 50 C dry\n    position body\n    place bulkhead in cabin\n");
        for (int i = 0; i < places; i++) {
            text.append("    place p").append(i).append(" in cabin\n");
        }
        return text.append("}\n").toString();
    }

    private static String catalogue() {
        return """
                catalogue parts {
                    cable pvc "PVC cable" {
                        temperature 105 C
                        size 18 ga diameter 2.5 mm
                    }
                    housing box12 "12-way housing" {
                        cavities 1..12
                    }
                }
                """;
    }

    private String covers() {
        StringBuilder text = new StringBuilder("    covers ");
        for (int i = 0; i < drawings; i++) {
            text.append(i == 0 ? "" : ", ").append('d').append(FIRST_YEAR + i);
        }
        return text.append("\n    serviceLoop 40 mm\n    excessAtMost 400 mm\n").toString();
    }

    private String wiring(String head, String ours, int shift) {
        StringBuilder text = new StringBuilder(head).append(" {\n").append(ours);
        text.append("    cable pvc\n    datum bulkhead\n    trunk main {\n");
        for (int i = 0; i < places; i++) {
            text.append("        breakout k").append(i).append(" at ").append(200 + i * 150 + shift).append(" mm\n");
        }
        text.append("    }\n");
        for (int i = 0; i < places; i++) {
            text.append("    branch b").append(i).append(" from k").append(i).append(" to p").append(i).append(' ')
                    .append(ours.isEmpty() ? 250 : 500).append(" mm\n");
        }
        for (int i = 0; i < places; i++) {
            text.append("    connector J").append(i).append(" at p").append(i).append(" is box12\n");
        }
        for (int i = 0; i < circuits; i++) {
            circuit(text, i);
        }
        return text.append("}\n").toString();
    }

    private void circuit(StringBuilder text, int i) {
        text.append("    circuit ").append(i + 1).append(" \"Circuit ").append(i + 1).append("\" ").append(colour(i))
                .append(" {\n");
        text.append("        splice S").append(i).append(" at k").append(i / CAVITIES).append('\n');
        text.append("        wire a 18 ga from ").append(end(i)).append(" to S").append(i).append('\n');
        text.append("        wire b 18 ga from S").append(i).append(" to ").append(end(circuits + i)).append('\n');
        text.append("        wire c 18 ga from S").append(i).append(" to ").append(end(2 * circuits + i)).append('\n');
        text.append("    }\n");
    }

    /** Circuits with neighbouring numbers are not alike. */
    private static String colour(int i) {
        return COLOURS.get(i % COLOURS.size()) + "/" + COLOURS.get((i + i / COLOURS.size() % 11 + 1) % COLOURS.size());
    }

    /** Each end has a cavity of its own. */
    private static String end(int number) {
        return "J" + number / CAVITIES + ":" + (number % CAVITIES + 1);
    }
}
