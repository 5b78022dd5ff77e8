// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.enumeration;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A small project from a seed, as text: choices with constraints, drawings and a harness under conditions, circuits of
 * which anything may depend on the vehicle, and slips planted at random.
 */
final class RandomProject {

    private static final String PARTS = """
            catalogue parts {
                cable hot {
                    temperature 125 C
                    size 18 ga diameter 2.4 mm
                    size 14 ga diameter 2.8 mm
                }
                cable cool {
                    temperature 60 C
                    size 18 ga diameter 2.6 mm
                    size 16 ga diameter 2.9 mm
                }
                fusibleLink linkWire {
                    temperature 125 C
                    size 18 ga diameter 3 mm
                }
                resistorCable ballast {
                    resistance 1.5 ohm
                    size 18 ga diameter 3 mm
                }
                terminal tab63 {
                    takes 0.75 mm2 .. 2.5 mm2
                }
                terminal tab95 {
                    takes 2 mm2 .. 6 mm2
                }
                seal small {
                    fits 2 mm .. 2.6 mm
                }
                seal large {
                    fits 2.6 mm .. 4 mm
                }
                plug blank
                housing plug2 {
                    family f2
                    gender tab
                    cavities 1 .. 2
                }
                housing socket2 {
                    family f2
                    gender socket
                    cavities 1 .. 2
                }
                housing plug4 {
                    family f4
                    gender tab
                    cavities 1 .. 4
                }
                housing single {
                    cavities 1
                }
                source battery12 {
                    type battery
                    voltage 12.6 V
                    polarity plus
                    pins plus, minus
                }
                lamp dip {
                    type headlamp
                    power 55 W
                    voltage 12.8 V
                    pins 1, 2
                    joins 1 to 2 through 3 ohm
                }
                motor six {
                    voltage 6 V
                    current 8 A
                    pins 1, 2
                }
                motor twelve {
                    voltage 12 V
                    current 5 A
                    pins 1, 2
                }
                flasher unit {
                    polarity B
                    pins L, B, E
                    joins B to L
                }
                switch pull {
                    pins 1, 2
                    states off, on
                    joins 1 to 2 while on
                }
                fuse f10 {
                    family blade
                    basis continuous
                    rating 10 A
                    pins 1, 2
                    protects 1 to 2
                }
                fuse f35 {
                    family blade
                    basis continuous
                    rating 35 A
                    pins 1, 2
                    protects 1 to 2
                }
                fuse glass {
                    rating 35 A
                    pins 1, 2
                    protects 1 to 2
                }
                fusibleLink block {
                    size 18 ga
                    pins 1, 2
                    protects 1 to 2
                }
                clip clip8
                opening hole4 {
                    bore 4 mm
                }
                opening hole20 {
                    bore 20 mm
                }
                covering bellows {
                    type flex
                    bore 20 mm
                }
            }
            """;
    private static final List<String> PLACES = List.of("bulkhead", "wing", "lampLeft", "lampRight", "tray", "dash");
    private static final List<String> COLOURS = List.of("BK", "RD", "RD/WH", "GN", "BU", "YE");

    private final Random random;
    private final StringBuilder out = new StringBuilder();
    private final List<String> literals = new ArrayList<>();
    private final List<String> drawings = new ArrayList<>();

    RandomProject(long seed) {
        random = new Random(seed);
    }

    /** The text; equal seeds give equal texts. */
    String text() {
        platform();
        out.append(PARTS);
        out.append("drawing rest of orrin {\n}\n");
        for (String position : random.nextInt(3) == 0 ? List.of("front", "rear") : List.of("front")) {
            alternatives(position);
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            wiring("harness", "ours" + i, " fills front", condition(3));
        }
        return out.toString();
    }

    private String one(List<String> list) {
        return list.get(random.nextInt(list.size()));
    }

    private boolean once(int in) {
        return random.nextInt(in) == 0;
    }

    private void line(String words) {
        out.append(words).append('\n');
    }

    private void platform() {
        line("platform orrin {");
        line("supply 12 V negative ground");
        int years = random.nextInt(3);
        if (years > 0) {
            line("years 1964 .. " + (1964 + years));
            literals.addAll(List.of("year <= 1964", "year = 1965", "year >= 1965", "year != 1965"));
        }
        if (once(2)) {
            line("group body of saloon, coupe" + (once(2) ? ", estate" : ""));
            literals.addAll(List.of("saloon", "body = coupe", "not saloon"));
        }
        int options = 1 + random.nextInt(years == 2 ? 2 : 3);
        for (int i = 0; i < options; i++) {
            line((once(2) ? "option o" : "upgrade o") + i);
            literals.addAll(List.of("o" + i, "not o" + i, "o" + i));
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            line(once(2) ? "never " + one(literals) + " and " + one(literals)
                    : "require " + one(literals) + " when " + one(literals));
        }
        line("zone bay ambient 80 C wet");
        line("zone cabin ambient 50 C dry");
        PLACES.forEach(place -> line("place " + place + (place.equals("dash") ? " in cabin" : " in bay")));
        line("position front" + condition(6));
        line("position rear" + condition(6));
        line("ground body1");
        line("ground engine1" + (once(3) ? " none" : ""));
        line("strap s1 from engine1 to body1 1 mohm" + condition(3));
        line("device battery is battery12 at tray on body1");
        line("device lampL is dip at lampLeft" + (once(2) ? " on body1" : "") + condition(4));
        line("device lampR is dip at lampRight" + (once(2) ? " on body1" : "") + condition(4));
        line("device blower at dash" + (once(2) ? " on engine1" : "") + condition(4) + " {");
        alternatives("is twelve", "is six");
        line("}");
        line("device flash is unit at dash" + condition(3));
        line("device pullSwitch is pull at dash");
        line("}");
    }

    private String condition(int in) {
        return once(in) ? " when " + sentence() : "";
    }

    private String sentence() {
        return switch (random.nextInt(6)) {
            case 0 -> one(literals) + " and " + one(literals);
            case 1 -> one(literals) + " or " + one(literals);
            case 2 -> "not (" + one(literals) + " and " + one(literals) + ")";
            default -> one(literals);
        };
    }

    /** One of two, or one for some vehicles and the other one otherwise, or one that some vehicles lack. */
    private void alternatives(String one, String other) {
        switch (random.nextInt(5)) {
            case 0 -> line(other);
            case 1 -> {
                line(one);
                line(other + " when " + sentence());
            }
            case 2 -> line(one + " when " + sentence());
            default -> line(one);
        }
    }

    private void alternatives(String position) {
        int count = 1 + random.nextInt(3);
        String literal = one(literals);
        for (int i = 0; i < count; i++) {
            String when = count == 1 ? condition(3)
                    : count == 2 ? " when " + (i == 0 ? literal : once(3) ? sentence() : "not (" + literal + ")")
                    : " when " + sentence();
            wiring("drawing", position + i, " fills " + position, when);
            drawings.add(position + i);
        }
    }

    private void wiring(String kind, String name, String position, String when) {
        boolean harness = kind.equals("harness");
        line(kind + " " + name + " of orrin" + position + when + " {");
        List<String> covered = drawings.stream().filter(each -> each.startsWith("front") && !once(3)).toList();
        if (harness && once(2) && !covered.isEmpty()) {
            line("covers " + String.join(", ", covered));
        }
        if (!once(4)) {
            line("cable " + one(List.of("hot", "hot", "cool")) + condition(6));
        }
        line("tolerance ± 5 mm");
        line("datum bulkhead");
        line("trunk main {");
        line("breakout left at " + (300 + random.nextInt(5) * 100) + " mm");
        line("breakout right at 1500 mm" + condition(5));
        line("}");
        line("branch bLeft from left to lampLeft " + (200 + random.nextInt(4) * 50) + " mm" + condition(6));
        line("branch bRight from right to lampRight 300 mm" + condition(6));
        line("branch bTray from left to tray 150 mm");
        if (harness && once(3)) {
            line("cap bLeft at wing within 900 mm" + condition(1));
        }
        for (int i = random.nextInt(4); i > 0; i--) {
            line("fit p" + i + " is " + one(List.of("clip8", "clip8", "hole4", "hole20", "bellows")) + " on main at "
                    + random.nextInt(15) * 100 + " mm" + condition(3));
        }
        connectors(name);
        for (int i = 1; i <= 2; i++) {
            line("device F" + i + " at tray" + condition(6) + " {");
            alternatives("is " + one(List.of("f10", "f10", "block")), "is " + one(List.of("f35", "glass", "block")));
            line("}");
        }
        line("stud G1 at " + one(List.of("wing", "tray")) + " on " + one(List.of("body1", "engine1")) + condition(5));
        circuits(harness);
        line("}");
    }

    private void connectors(String name) {
        for (int i = 1; i <= 3; i++) {
            String at = switch (i) {
                case 1 -> " at bulkhead";
                case 2 -> " on bLeft";
                default -> " on bRight";
            };
            line("connector J" + i + at + condition(4) + " {");
            alternatives("is " + one(List.of("plug2", "socket2", "plug4")),
                    "is " + one(List.of("plug2", "socket2", "single")));
            if (i > 1 && !once(3)) {
                line("mates " + (i == 2 ? "lampL" : "lampR") + condition(4));
            } else if (!drawings.isEmpty() && !drawings.getLast().equals(name)) {
                line("mates J1 of " + one(drawings) + condition(3));
            } else if (once(2)) {
                line("mates flash" + condition(3));
                line("map 1 to " + one(List.of("L", "B")) + condition(3));
                line("map 2 to " + one(List.of("E", "B")) + condition(3));
            }
            for (int fact = once(2) ? 1 + random.nextInt(4) : 0; fact > 0; fact--) {
                line(one(List.of("terminal # is tab63", "terminal # is tab95", "seal # is small", "seal # is large",
                        "plug # is blank", "seal # is tab63")).replace("#", "" + (1 + random.nextInt(2 + fact / 3)))
                        + condition(3));
            }
            line("}");
        }
    }

    private void circuits(boolean harness) {
        int splices = 0;
        for (int i = 1; i <= 3 + random.nextInt(3); i++) {
            String splice = once(2) ? "S" + ++splices : "";
            line("circuit " + (once(25) ? 1 : i) + " " + one(COLOURS) + condition(4) + " {");
            if (!splice.isEmpty()) {
                line("splice " + splice + " on main at " + (700 + random.nextInt(3) * 10) + " mm" + condition(6));
            }
            if (harness && once(4) && !drawings.isEmpty()) {
                line("stands for " + (1 + random.nextInt(4)) + " of " + one(drawings));
            }
            List<String> ends = switch (i) {
                case 1 -> List.of("battery:plus", "F1:1", "F2:1");
                case 2 -> List.of("F1:2", "pullSwitch:1", "J1:1");
                case 3 -> List.of("J2:2", "J3:2", "G1", "lampL:2");
                default -> List.of("pullSwitch:2", "J2:1", "J3:1", "lampL:1", "lampR:1", "blower:1", "F2:2", "J1:2");
            };
            for (int wire = 0; wire < 2 + random.nextInt(3); wire++) {
                wire((char) ('a' + wire), ends, splice, harness);
            }
            line("}");
        }
    }

    private void wire(char name, List<String> ends, String splice, boolean harness) {
        String from = splice.isEmpty() ? one(ends) : splice;
        line("wire " + name + (once(12) ? " " + one(COLOURS) : "") + condition(4) + " {");
        alternatives("size 14 ga", "size " + one(List.of("18 ga", "16 ga", "8 ga")));
        alternatives("from " + from, "from " + end(ends));
        alternatives("to " + end(ends), "to " + end(ends));
        if (once(4)) {
            line("length " + one(List.of("100 mm", "40 mm", "600 mm")) + condition(3));
        }
        if (once(6)) {
            line("cable " + one(List.of("linkWire", "cool", "ballast", "small")) + condition(2));
        }
        if (harness && once(4)) {
            line("legend \"LAMP LEFT 12\"");
        }
        if (harness && once(12)) {
            line("as factory because \"kept\"" + condition(2));
        }
        line("}");
    }

    private String end(List<String> ends) {
        return switch (random.nextInt(16)) {
            case 0 -> "J" + (1 + random.nextInt(3)) + ":" + (1 + random.nextInt(5));
            case 1 -> one(List.of("J9:1", "J9", "S1", "G1", "flash:B", "flash:E", "blower:2", "lampR:2"));
            case 2 -> "J1:" + (1 + random.nextInt(2));
            default -> one(ends);
        };
    }
}
