// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.loomwright.app.BadCall;
import org.loomwright.electric.Example;
import org.loomwright.electric.network.Schematic;

/**
 * A platform of our own whose vehicles differ by options alone: blocks of lamps and motors, each behind a fuse and a
 * switch, that hang from one feed, some with a relay, some grounded through the engine; which wires, gauges and loads
 * a block has depends on some of the options.
 */
final class OptionsPlatform {

    private final Random random;
    private final int options;
    private final int blocks;
    private final int choices;
    private final int loads;
    private final StringBuilder platform = new StringBuilder();
    private final StringBuilder drawing = new StringBuilder();

    private OptionsPlatform(long seed, int options, int blocks, int choices, int loads) {
        this.random = new Random(seed);
        this.options = options;
        this.blocks = blocks;
        this.choices = choices;
        this.loads = loads;
    }

    /**
     * Makes one and reads it.
     *
     * @param folder  where its text is written
     * @param options how many there are: 2 to that power is the number of vehicles
     * @param blocks  how many blocks hang from the feed
     * @param choices on how many options a block depends
     * @param loads   how many loads a block has
     */
    static Schematic of(Path folder, long seed, int options, int blocks, int choices, int loads)
            throws IOException, BadCall {
        Path place = folder.resolve("made" + seed);
        Files.createDirectories(place);
        Files.writeString(place.resolve("made.loom"), new OptionsPlatform(seed, options, blocks, choices, loads)
                .text());
        return Schematic.of(Example.at(place)).getFirst();
    }

    private String text() {
        platform.append("""
                platform made "Made" {
                    supply 12 V negative ground
                    years 1964 .. 1964
                """);
        for (int i = 0; i < options; i++) {
            platform.append("    option o").append(i).append(" \"Option ").append(i).append("\"\n");
        }
        platform.append("""
                    zone bay "Bay" ambient 40 C dry
                    place board "Board" in bay
                    place front "Front" in bay
                    position whole "All wires"
                    ground body "Body"
                    ground engine "Engine"
                    strap lead from engine to body 2 mohm
                    device battery "Battery" is battery at board on body
                    device machine "Alternator" is machine at board on engine
                """);
        drawing.append("""
                drawing sheet1 "Sheet" of made fills whole {
                    tolerance ± 5 mm
                    datum board
                    trunk main {
                        breakout one at 400 mm
                    }
                    branch bFront from one to front 300 mm
                    circuit 1 "Feed" RD {
                        splice S1 on bFront at 20 mm
                        wire a 6 mm2 from battery:plus to S1
                        wire b 4 mm2 from machine:B to S1
                    }
                """);
        for (int block = 0; block < blocks; block++) {
            block(block);
        }
        modes();
        return platform + "}\n" + drawing + "}\n" + CATALOGUE;
    }

    private String option(int block) {
        int option = (block * Math.max(1, options / blocks) + random.nextInt(choices)) % options;
        return (random.nextBoolean() ? "" : "not ") + "o" + option;
    }

    private void block(int block) {
        String name = "b" + block;
        boolean relay = random.nextInt(3) == 0;
        platform.append("    device ").append(name).append("sw \"Switch ").append(block)
                .append("\" is onOff at front\n");
        platform.append("    device ").append(name).append("f \"Fuse ").append(block).append("\" is fuse")
                .append(random.nextBoolean() ? "10" : "20").append(" at front\n");
        if (relay) {
            platform.append("    device ").append(name).append("r \"Relay ").append(block)
                    .append("\" is relay at front\n");
        }
        drawing.append("    circuit ").append(10 + block).append(" \"Block ").append(block).append("\" GN {\n")
                .append("        splice S").append(10 + block).append(" on bFront at ").append(40 + 20 * block)
                .append(" mm\n");
        wire("a", "2.5 mm2", "S1", name + "f:line", "");
        String fan = "S" + (10 + block);
        if (relay) {
            wire("b", "1 mm2", name + "f:load", name + "sw:line", "");
            wire("c", "0.5 mm2", name + "sw:load", name + "r:86", "");
            wire("d", "1 mm2", name + "r:85", "board via body", "");
            wire("e", "2.5 mm2", name + "f:load", name + "r:30", "");
            wire("g", random.nextBoolean() ? "1.5 mm2" : "2.5 mm2", name + "r:87", fan, "");
        } else {
            wire("b", "2.5 mm2", name + "f:load", name + "sw:line", "");
            wire("g", random.nextBoolean() ? "1 mm2" : "2.5 mm2", name + "sw:load", fan, "");
        }
        for (int load = 0; load < loads; load++) {
            String when = random.nextInt(4) == 0 ? "" : " when " + option(block)
                    + (random.nextInt(3) == 0 ? " and " + option(block) : "");
            String kind = random.nextInt(4) == 0 ? "motor" : random.nextBoolean() ? "lamp21" : "lamp55";
            String device = name + "d" + load;
            platform.append("    device ").append(device).append(" \"Load ").append(block).append('.').append(load)
                    .append("\" is ").append(kind).append(" at front on ").append(random.nextInt(4) == 0 ? "engine"
                            : "body").append(when).append('\n');
            String thin = "0." + (random.nextBoolean() ? "5" : "75") + " mm2";
            if (random.nextInt(3) == 0) {
                String other = option(block);
                wire("l" + load, thin, fan, device + ":1", when.isEmpty() ? " when " + other : when + " and " + other);
                wire("k" + load, "1.5 mm2", fan, device + ":1", when.isEmpty() ? " when not (" + other + ")"
                        : when + " and not (" + other + ")");
            } else {
                wire("l" + load, thin, fan, device + ":1", when);
            }
        }
        drawing.append("    }\n");
    }

    private void wire(String label, String size, String from, String to, String when) {
        drawing.append("        wire ").append(label).append(' ').append(size).append(" from ").append(from)
                .append(" to ").append(to).append(when).append('\n');
    }

    private void modes() {
        String[] names = {"keyOff", "some", "many", "all", "idleSome", "idleAll", "standing", "turning"};
        for (int mode = 0; mode < names.length; mode++) {
            platform.append("    mode ").append(names[mode]).append(" \"").append(names[mode]).append("\" {\n")
                    .append("        set engine to ").append(mode == 0 || mode == 6 ? "stopped" : mode == 4 || mode == 5
                            ? "idle" : "cruise").append('\n');
            for (int block = 0; block < blocks; block++) {
                boolean on = mode == 3 || mode == 5 || mode != 0 && random.nextBoolean();
                platform.append("        set b").append(block).append("sw to ").append(on ? "on" : "off").append('\n');
            }
            platform.append("    }\n");
        }
    }

    private static final String CATALOGUE = """
            catalogue parts "Parts" {
                source battery "Battery" {
                    type battery
                    voltage 12.6 V
                    resistance 8 mohm
                    polarity plus
                    pins plus, minus
                }
                source machine "Alternator" {
                    type alternator
                    voltage 14.2 V
                    current 60 A
                    pins B, case
                }
                switch onOff "Switch" {
                    pins line, load
                    states off, on
                    rating 16 A
                    joins line to load through 10 mohm while on
                }
                relay relay "Relay" {
                    rating 30 A
                    pullIn 8 V
                    dropOut 3 V
                    pins 30, 85, 86, 87
                    states rest, pulled
                    joins 86 to 85 through 85 ohm
                    joins 30 to 87 through 5 mohm while pulled
                }
                fuse fuse10 "Fuse 10 A" {
                    basis continuous
                    rating 10 A
                    pins line, load
                    protects line to load
                }
                fuse fuse20 "Fuse 20 A" {
                    basis continuous
                    rating 20 A
                    pins line, load
                    protects line to load
                }
                lamp lamp21 "Lamp 21 W" {
                    voltage 13.5 V
                    current 1.6 A
                    pins 1
                }
                lamp lamp55 "Lamp 55 W" {
                    voltage 13.2 V
                    current 4.2 A
                    pins 1
                }
                motor motor "Motor" {
                    voltage 13 V
                    current 5 A
                    start 15 A
                    stall 20 A
                    pins 1
                }
            }
            """;
}
