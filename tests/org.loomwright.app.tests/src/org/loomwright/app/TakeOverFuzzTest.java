// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.loomwright.app.TakeOverDrawings.Taken;
import org.loomwright.compare.draft.HarnessDraft;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.lang.Formatter;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;

/**
 * Random years of which a harness is written, and the same with more lamps in some of them: what is taken over joins in
 * each year the same pins as its drawing, and each line that was written is there still, in the same order.
 */
class TakeOverFuzzTest {

    private static final int SEEDS = 25;
    private static final int FIRST = 1966;
    private static final int YEARS = 3;
    private static final int LAMPS = 6;
    private static final List<String> SIZES = List.of("0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2");

    /** Years of lamps; two of them share a feed, all of them a ground. Those that are not there yet can be left out. */
    private static String cars(long seed, IntPredicate isThere) {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder("platform orrin {\n    years 1966 .. 1968\n    place bulkhead\n"
                + "    place stud\n    ground body\n    position front\n    position facia\n");
        for (int lamp = 0; lamp < LAMPS; lamp++) {
            text.append("    place p").append(lamp).append("\n    place q").append(lamp).append("\n    device lamp")
                    .append(lamp).append(" \"Lamp ").append(lamp).append("\"\n");
        }
        text.append("}\ncatalogue parts {\n    housing plug12 {\n        cavities 1..12\n    }\n    housing plug2 {\n"
                + "        cavities 1..2\n    }\n}\n");
        for (int year = 0; year < YEARS; year++) {
            text.append("drawing dash").append(FIRST + year).append(" of orrin fills facia when year = ").append(FIRST
                    + year).append(" {\n    datum bulkhead\n    connector J7 at bulkhead is plug12\n}\n");
            drawing(random, year, isThere, text);
        }
        return text.toString();
    }

    private static void drawing(Random random, int year, IntPredicate isThere, StringBuilder text) {
        StringBuilder branches = new StringBuilder();
        StringBuilder connectors = new StringBuilder();
        StringBuilder ground = new StringBuilder();
        StringBuilder circuits = new StringBuilder();
        int shift = random.nextInt(3);
        for (int feed = 0; feed < LAMPS / 2; feed++) {
            List<String> lamps = new ArrayList<>();
            String size = SIZES.get(random.nextInt(SIZES.size()));
            for (int lamp = 2 * feed; lamp < 2 * feed + 2; lamp++) {
                boolean ever = random.nextInt(4) > 0;
                String place = (random.nextInt(5) == 0 ? "q" : "p") + lamp;
                int length = 150 + random.nextInt(60);
                if (ever && (year == 0 && lamp == 0 || isThere.test(year * LAMPS + lamp))) {
                    lamps.add("C" + lamp);
                    branches.append("    branch b").append(lamp).append(" from t").append(lamp).append(" to ")
                            .append(place).append(' ').append(length).append(" mm\n");
                    connectors.append("    connector C").append(lamp).append(" on b").append(lamp)
                            .append(" is plug2 mates lamp").append(lamp).append('\n');
                    ground.append("        wire g").append(lamp).append(" 1 mm2 from C").append(lamp)
                            .append(":2 to SG\n");
                }
            }
            String pin = "J1:" + (1 + feed + shift);
            if (lamps.size() == 1) {
                circuits.append("    circuit ").append(10 + feed).append(" RD {\n        wire a ").append(size)
                        .append(" from ").append(pin).append(" to ").append(lamps.getFirst()).append(":1\n    }\n");
            } else if (lamps.size() == 2) {
                circuits.append("    circuit ").append(10 + feed).append(" RD {\n        splice S").append(feed)
                        .append(" at t").append(2 * feed).append("\n        wire a ").append(size).append(" from ")
                        .append(pin).append(" to S").append(feed).append('\n');
                for (String lamp : lamps) {
                    circuits.append("        wire ").append(lamp.charAt(1)).append("x ").append(size).append(" from S")
                            .append(feed).append(" to ").append(lamp).append(":1\n");
                }
                circuits.append("    }\n");
            }
        }
        if (!ground.isEmpty()) {
            circuits.append("    circuit 90 BK {\n        splice SG at t0\n").append(ground)
                    .append("        wire z 2.5 mm2 from SG to G1\n    }\n");
        }
        text.append("drawing front").append(FIRST + year).append(" of orrin fills front when year = ").append(FIRST
                + year).append(" {\n    tolerance ± 2 mm\n    datum bulkhead\n    trunk main {\n");
        for (int lamp = 0; lamp < LAMPS; lamp++) {
            text.append("        breakout t").append(lamp).append(" at ").append(200 + 150 * lamp + random.nextInt(40))
                    .append(" mm\n");
        }
        text.append("    }\n").append(branches).append("    branch bG from t0 to stud 100 mm\n    connector J1 at"
                + " bulkhead is plug12 mates J7 of dash").append(FIRST + year).append('\n').append(connectors)
                .append("    stud G1 at stud via bG on body\n").append(circuits).append("}\n");
    }

    /** The pins of devices and interfaces, and the ground points, that wires join in some vehicles. */
    private static TreeSet<String> joined(WiringView view, Condition vehicles) {
        Map<Node, Node> up = new TreeMap<>();
        for (WireView wire : view.wires()) {
            if (!wire.when().excludes(vehicles)) {
                List<Node> ends = Stream.of(wire.from(), wire.to()).map(cases -> in(cases, vehicles)).toList();
                up.put(top(up, ends.getFirst()), top(up, ends.getLast()));
            }
        }
        Map<Node, TreeSet<String>> groups = new TreeMap<>();
        for (Node node : List.copyOf(up.keySet())) {
            name(view, node, vehicles).ifPresent(name -> groups.computeIfAbsent(top(up, node), key -> new TreeSet<>())
                    .add(name));
        }
        TreeSet<String> all = new TreeSet<>();
        groups.values().forEach(group -> all.add(group.toString()));
        return all;
    }

    private static Node top(Map<Node, Node> up, Node node) {
        Node at = node;
        up.putIfAbsent(at, at);
        while (!up.get(at).equals(at)) {
            at = up.get(at);
        }
        return at;
    }

    private static Optional<String> name(WiringView view, Node node, Condition vehicles) {
        return switch (node.kind()) {
            case STUD -> Optional.of("ground at " + view.studs().get(node.element()).stud().place()
                    .orElseThrow().text());
            case CAVITY -> {
                ConnectorView connector = view.connectors().get(node.element());
                assertTrue(vehicles.implies(connector.when()), node + " is there");
                ConnectorView.Mate mate = in(connector.mates(), vehicles);
                yield Optional.of(mate.element() + " of " + mate.owner() + ":" + node.pin()
                        + (mate.device() ? " at " + view.run(connector.connector().branch().orElseThrow().text())
                                .orElseThrow().to().orElseThrow().text() : ""));
            }
            default -> Optional.empty();
        };
    }

    private static <T> T in(List<Case<T>> cases, Condition vehicles) {
        List<Case<T>> here = cases.stream().filter(each -> !each.when().excludes(vehicles)).toList();
        assertEquals(1, here.size(), here.toString());
        return here.getFirst().value();
    }

    @Test
    void whatEachYearGainsIsJoinedAsItsDrawingHasIt() throws BadCall {
        int edited = 0;
        int splices = 0;
        SourceReader reader = Repository.reader();
        TakeOverDrawings takeOver = new TakeOverDrawings(reader);
        for (int seed = 0; seed < SEEDS; seed++) {
            Random random = new Random(1000 + seed);
            boolean[] there = new boolean[YEARS * LAMPS];
            for (int i = 0; i < there.length; i++) {
                there[i] = random.nextInt(3) > 0;
            }
            Project before = TextProject.open(cars(seed, i -> there[i])).project();
            assertEquals(List.of(), before.problems(), "seed " + seed);
            List<WiringView> views = List.of("front1966", "front1967", "front1968").stream().map(name -> before.wiring(
                    name).orElseThrow()).toList();
            Source ours = reader.read("ours.loom", Formatter.format(HarnessDraft.of("ours", before, views, HarnessDraft
                    .Variant.PLAIN, Cancel.NEVER).text()).getBytes(StandardCharsets.UTF_8));
            Project after = TextProject.open(cars(seed, i -> true)).project();
            List<Source> sources = new ArrayList<>(after.sources());
            sources.add(ours);
            Project with = Project.link(sources);
            Taken taken = takeOver.into(with.wiring("ours").orElseThrow(), with, Cancel.NEVER);
            String text = taken.project().text("ours.loom").orElseThrow();
            assertEquals(List.of(), taken.project().problems(), "seed " + seed);
            for (int year = FIRST; year < FIRST + YEARS; year++) {
                WiringView theirs = taken.project().wiring("front" + year).orElseThrow();
                assertEquals(joined(theirs, theirs.when()), joined(taken.harness(), theirs.when()), "seed " + seed
                        + ", " + year);
            }
            List<String> left = new ArrayList<>(text.lines().toList());
            for (String line : ours.text().lines().toList()) {
                if (!line.strip().startsWith("cap ")) {
                    int at = left.indexOf(line);
                    assertTrue(at >= 0, "seed " + seed + ": " + line);
                    left.subList(0, at + 1).clear();
                }
            }
            edited += text.equals(ours.text()) ? 0 : 1;
            splices += taken.choices().stream().anyMatch(each -> each.words().startsWith("holds one wire more"))
                    ? 1 : 0;
            Taken again = takeOver.into(taken.harness(), taken.project(), Cancel.NEVER);
            assertEquals(text, again.project().text("ours.loom").orElseThrow(), "nothing is taken over twice");
        }
        assertTrue(edited > SEEDS / 2 && splices > SEEDS / 4, edited + " edited, " + splices + " with a shared end");
    }
}
