// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;

/**
 * An invented harness by seed, in which a fifth of the wires are near twins of others, and a revision of it of which it
 * is known which element is which.
 */
final class Invented {

    private static final List<String> COLOURS = List.of("BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH");
    private static final String HARNESS = "front";
    private static final int CAVITIES = 24;

    /** What is the same on both sides has the same number. */
    private static final class Plug {
        private final int number;
        private String name;
        private int branch;

        Plug(int number, String name, int branch) {
            this.number = number;
            this.name = name;
            this.branch = branch;
        }
    }

    private static final class Line {
        private final int number;
        private String circuit;
        private String name;
        private int size;
        private String colour;
        private final int from;
        private final int fromCavity;
        private final int to;
        private int toCavity;

        Line(int number, String circuit, String name, int size, String colour, int[] ends) {
            this.number = number;
            this.circuit = circuit;
            this.name = name;
            this.size = size;
            this.colour = colour;
            from = ends[0];
            fromCavity = ends[1];
            to = ends[2];
            toCavity = ends[3];
        }

        Line again() {
            return new Line(number, circuit, name, size, colour, new int[] {from, fromCavity, to, toCavity});
        }
    }

    private final List<Plug> plugs = new ArrayList<>();
    private final List<Line> lines = new ArrayList<>();
    private final Set<Integer> edited = new HashSet<>();

    private Invented() {
    }

    static Invented of(int wires, long seed) {
        Random random = new Random(seed);
        Invented made = new Invented();
        int plugs = Math.max(3, wires / 8);
        for (int i = 0; i < plugs; i++) {
            made.plugs.add(new Plug(i, "J" + (i + 1), i));
        }
        for (int i = 0; i < wires; i++) {
            Line twin = i > 0 && random.nextInt(5) == 0 ? made.lines.get(random.nextInt(i)) : null;
            int[] ends = {twin != null ? twin.from : random.nextInt(plugs), 1 + random.nextInt(CAVITIES),
                twin != null ? twin.to : random.nextInt(plugs), 1 + random.nextInt(CAVITIES)};
            int circuit = twin != null ? Integer.parseInt(twin.circuit) : 1 + i / 3;
            made.lines.add(new Line(i, Integer.toString(circuit), "w" + i, twin != null ? twin.size
                    : List.of(18, 16, 14, 12).get(random.nextInt(4)), twin != null ? twin.colour
                    : COLOURS.get(random.nextInt(COLOURS.size())), ends));
        }
        return made;
    }

    /** A revision in which a tenth of the elements is edited. */
    Invented revised(long seed) {
        Random random = new Random(seed);
        Invented now = new Invented();
        plugs.forEach(each -> now.plugs.add(new Plug(each.number, each.name, each.branch)));
        lines.forEach(each -> now.lines.add(each.again()));
        for (int i = Math.max(1, lines.size() / 10); i > 0; i--) {
            now.edit(random);
        }
        return now;
    }

    private void edit(Random random) {
        Line line = lines.get(random.nextInt(lines.size()));
        switch (random.nextInt(9)) {
            case 0 -> rename(line, random);
            case 1 -> {
                rename(line, random);
                line.size = line.size == 18 ? 16 : 18;
            }
            case 2 -> line.size = line.size == 12 ? 14 : 12;
            case 3 -> line.toCavity = 1 + random.nextInt(CAVITIES);
            case 4 -> swap(line, lines.get(random.nextInt(lines.size())));
            case 5 -> split(line.circuit, random);
            case 6 -> reuse(line, random);
            case 7 -> plugs.get(random.nextInt(plugs.size())).name = "K" + random.nextInt(100_000);
            default -> {
                Plug one = plugs.get(random.nextInt(plugs.size()));
                Plug other = plugs.get(random.nextInt(plugs.size()));
                String name = one.name;
                one.name = other.name;
                other.name = name;
            }
        }
        edited.add(line.number);
    }

    private static void rename(Line line, Random random) {
        line.name = "r" + random.nextInt(100_000);
    }

    private void swap(Line one, Line other) {
        if (one.circuit.equals(other.circuit)) {
            String name = one.name;
            one.name = other.name;
            other.name = name;
            edited.add(other.number);
        }
    }

    /** About half of the wires of a circuit become a circuit of their own. */
    private void split(String circuit, Random random) {
        String fresh = Integer.toString(1_000 + random.nextInt(100_000));
        for (Line each : lines) {
            if (each.circuit.equals(circuit) && random.nextBoolean()) {
                each.circuit = fresh;
                edited.add(each.number);
            }
        }
    }

    /** A wire goes, and another one takes its name. */
    private void reuse(Line line, Random random) {
        lines.remove(line);
        for (Line each : lines) {
            if (each.circuit.equals(line.circuit)) {
                each.name = line.name;
                edited.add(each.number);
                return;
            }
        }
    }

    /** The source text. */
    String text() {
        StringBuilder text = new StringBuilder("harness " + HARNESS + " of orrin {\n    datum p0\n    trunk main {\n");
        plugs.forEach(each -> text.append("        breakout o").append(each.number).append(" at ")
                .append(100 + 90 * each.number).append(" mm\n"));
        text.append("    }\n");
        plugs.forEach(each -> text.append("    branch b").append(each.number).append(" from o").append(each.number)
                .append(" to p").append(each.number + 1).append(' ').append(150 + 7 * each.number).append(" mm\n"));
        plugs.forEach(each -> text.append("    connector ").append(each.name).append(" on b").append(each.branch)
                .append(" is housing").append(each.number % 4).append('\n'));
        TreeMap<String, List<Line>> circuits = new TreeMap<>();
        lines.forEach(each -> circuits.computeIfAbsent(each.circuit, any -> new ArrayList<>()).add(each));
        circuits.forEach((name, all) -> {
            text.append("    circuit ").append(name).append(" {\n");
            all.forEach(each -> text.append("        wire ").append(each.name).append(' ').append(each.size)
                    .append(" ga ").append(each.colour).append(" from ").append(plugs.get(each.from).name).append(':')
                    .append(each.fromCavity).append(" to ").append(plugs.get(each.to).name).append(':')
                    .append(each.toCavity).append('\n'));
            text.append("    }\n");
        });
        return text.append("}\n").toString();
    }

    /** Wires and connectors by number: those of wires from 0, those of connectors from -1 downwards. */
    Map<Integer, ItemId> elements() {
        Map<Integer, ItemId> elements = new TreeMap<>();
        lines.forEach(each -> elements.put(each.number, new ItemId(Sort.WIRE, HARNESS + "/" + each.circuit,
                each.name)));
        plugs.forEach(each -> elements.put(-1 - each.number, new ItemId(Sort.CONNECTOR, HARNESS, each.name)));
        return elements;
    }

    /** Numbers of the wires that the edits touched. */
    Set<Integer> edited() {
        return edited;
    }
}
