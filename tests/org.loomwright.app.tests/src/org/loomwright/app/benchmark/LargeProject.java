// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.benchmark;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.loomwright.app.load.Input;

/**
 * An invented project of any size: one platform with a battery, one catalogue, drawings that are alike but for their
 * lengths, and a harness that covers them all. In each, one lead with a fusible link feeds eight fuses, and they feed
 * a lamp in every second circuit; the other circuits join three cavities. The same numbers give the same bytes.
 */
final class LargeProject {

    private static final int CAVITIES = 12;
    private static final int FIRST_YEAR = 1960;
    private static final int MOST_YEARS = 50;
    private static final int FUSES = 8;
    private static final List<String> COLOURS = List.of("BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH",
            "PK", "TQ");

    private final int drawings;
    private final int years;
    private final int circuits;
    private final int places;
    private final Random random = new Random(1200);

    /**
     * @param drawings how many drawings: each is for one model year; more than 50 must be a multiple of 50, and each
     *                 is then for one body of one year
     * @param wires    how many wires each has, a multiple of three, at least 12
     */
    LargeProject(int drawings, int wires) {
        this.drawings = drawings;
        years = Math.min(drawings, MOST_YEARS);
        circuits = (wires - FUSES - 1) / 3;
        places = (circuits * 3 + CAVITIES - 1) / CAVITIES;
    }

    List<Input> inputs() {
        List<Input> inputs = new ArrayList<>();
        inputs.add(input("catalogue.loom", catalogue()));
        for (int i = 0; i < drawings; i++) {
            String only = drawings > years ? " and b" + i / years : "";
            inputs.add(input("drawings/" + name(i) + ".loom", wiring("drawing " + name(i) + " \"Wiring " + name(i)
                    + "\" of orrin fills body when year = " + (FIRST_YEAR + i % years) + only, "",
                    random.nextInt(40))));
        }
        inputs.add(input("harness.loom", wiring("harness body \"Body\" of orrin fills body", covers(), 20)));
        inputs.add(input("platform.loom", platform()));
        return inputs;
    }

    /** The name of a drawing. */
    private String name(int drawing) {
        return "d" + (FIRST_YEAR + drawing % years) + (drawings > years ? "b" + drawing / years : "");
    }

    private static Input input(String name, String text) {
        return Input.of(name, text.getBytes(StandardCharsets.UTF_8));
    }

    private String platform() {
        StringBuilder text = new StringBuilder("platform orrin \"Orrin 1200\" {\n    supply 12 V negative ground\n");
        text.append("    years ").append(FIRST_YEAR).append(" .. ").append(FIRST_YEAR + years - 1).append('\n');
        text.append("    group body of ").append(drawings > years ? bodies() : "saloon, coupe, estate")
                .append("\n    option heater\n    upgrade fan\n");
        text.append("    zone cabin ambient 50 C dry\n    position body\n    place bulkhead in cabin\n");
        text.append("    ground shell\n    device battery \"Battery\" is battery12 at bulkhead on shell\n");
        for (int i = 0; i < places; i++) {
            text.append("    place p").append(i).append(" in cabin\n");
        }
        return text.append("}\n").toString();
    }

    private String bodies() {
        return IntStream.range(0, drawings / years).mapToObj(i -> "b" + i).collect(Collectors.joining(", "));
    }

    private static String catalogue() {
        return """
                catalogue parts {
                    cable pvc "PVC cable" {
                        temperature 105 C
                        size 18 ga diameter 2.5 mm
                        size 10 ga diameter 4.6 mm
                    }
                    fusibleLink linkWire "Fusible link wire" {
                        temperature 125 C
                        size 16 ga diameter 3 mm
                    }
                    fuse ceramic5 "Ceramic body fuse, 5 A" {
                        family ceramicBody
                        basis continuous
                        rating 5 A
                        pins line, load
                        protects line to load
                    }
                    lamp smallLamp "Lamp, 4 W" {
                        voltage 13.5 V
                        power 4 W
                        pins 1 "side", 2 "turn"
                    }
                    source battery12 "Battery, 12 V" {
                        type battery
                        voltage 12.6 V
                        polarity plus
                        pins plus, minus
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
            text.append(i == 0 ? "" : ", ").append(name(i));
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
        for (int i = 1; i <= FUSES; i++) {
            text.append("    device F").append(i).append(" is ceramic5 at p0\n");
        }
        for (int i = 1; i < circuits; i += 2) {
            text.append("    device L").append(i).append(" is smallLamp at p").append(i % places)
                    .append(" on shell\n");
        }
        feed(text);
        for (int i = 0; i < circuits; i++) {
            circuit(text, i);
        }
        return text.append("}\n").toString();
    }

    private static void feed(StringBuilder text) {
        text.append("    circuit 0 \"Feed\" RD {\n        splice S at k0\n");
        text.append("        wire a 16 ga from battery:plus to S length 150 mm cable linkWire\n");
        for (int i = 1; i <= FUSES; i++) {
            text.append("        wire f").append(i).append(" 10 ga from S to F").append(i).append(":line\n");
        }
        text.append("    }\n");
    }

    private void circuit(StringBuilder text, int i) {
        text.append("    circuit ").append(i + 1).append(" \"Circuit ").append(i + 1).append("\" ").append(colour(i))
                .append(" {\n");
        text.append("        splice S").append(i).append(" at k").append(i / CAVITIES).append('\n');
        if (i % 2 == 1) {
            text.append("        wire a 18 ga from F").append(i / 2 % FUSES + 1).append(":load to S").append(i)
                    .append('\n');
            text.append("        wire b 18 ga from S").append(i).append(" to L").append(i).append(":1\n");
            text.append("        wire c 18 ga from S").append(i).append(" to L").append(i).append(":2\n    }\n");
            return;
        }
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
