// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Point;
import org.loomwright.sheets.content.CurrentWays;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.content.PieceEnd;
import org.loomwright.sheets.page.Paper;

/** Circuit diagrams of the Orrin lead from the battery to ground, over all that is plugged together, in colour. */
class CircuitDiagramTest {

    private static final String ONE = "year 1970 and saloon and deluxe and rhd and not heater and fogLamps"
            + " and not towBar and halogen and headlampRelays and not electricFan and not ledTail"
            + " and not electronicFlasher and not electronicIgnition";
    private static Examples examples;
    private static Opened orrin;

    @TempDir
    private Path folder;

    @BeforeAll
    static void open() throws Exception {
        examples = new Examples();
        orrin = examples.example("orrin");
    }

    /** All that a diagram of a circuit shows: points and where the current goes from each. */
    private record Shown(Map<Point, Set<Point>> next, Set<Point> own, Set<String> wires) {

        Set<Point> from(Set<Point> starts) {
            Set<Point> seen = new HashSet<>(starts);
            Deque<Point> open = new ArrayDeque<>(starts);
            while (!open.isEmpty()) {
                next.getOrDefault(open.remove(), Set.of()).stream().filter(seen::add).forEach(open::add);
            }
            return seen;
        }
    }

    private static Shown shown(LaidHarness harness, CurrentWays ways, String circuit) {
        Map<Point, Condition> ends = new LinkedHashMap<>();
        Map<Point, Set<Point>> next = new HashMap<>();
        for (Piece piece : harness.pieces().stream().filter(each -> each.circuit().equals(circuit)).toList()) {
            List<Point> both = piece.ends().stream().map(PieceEnd::node).map(ways::point).toList();
            both.forEach(each -> ends.merge(each, piece.when(), Condition::or));
            next.computeIfAbsent(both.getFirst(), any -> new HashSet<>()).add(both.getLast());
            next.computeIfAbsent(both.getLast(), any -> new HashSet<>()).add(both.getFirst());
        }
        Set<String> wires = new TreeSet<>();
        for (CurrentWays.Way way : ways.around(ends, edge -> inner(edge, harness, circuit)).ways()) {
            next.computeIfAbsent(way.from(), any -> new HashSet<>()).add(way.to());
            if (way.edge().map(Edge::link).orElse(null) instanceof Link.OfWire wire) {
                wires.add(wire.wire().owner() + " " + wire.wire().label());
            }
        }
        return new Shown(next, ends.keySet(), wires);
    }

    private static boolean inner(Edge edge, LaidHarness harness, String circuit) {
        return edge.link() instanceof Link.OfWire wire && wire.wire().owner().equals(harness.name())
                && wire.wire().circuit().name().text().equals(circuit);
    }

    @Test
    void eachCircuitOfACarIsDrawnFromTheBatteryAndThoseOfLoadsToGround() throws Exception {
        Order order = examples.order(orrin, "frontKit", ONE);
        LaidHarness front = order.harnesses().getFirst();
        CurrentWays ways = CurrentWays.of(order, front).orElseThrow();
        assertEquals(Set.of(), ways.apart(), "one vehicle has its harnesses whole");
        Set<String> circuits = new TreeSet<>(front.pieces().stream().map(Piece::circuit).toList());
        Set<String> grounded = new TreeSet<>();
        for (String circuit : circuits) {
            Shown shown = shown(front, ways, circuit);
            Set<Point> sources = new HashSet<>(shown.next().keySet());
            sources.removeIf(each -> !ways.isSource(each));
            if (Set.of("90", "91").contains(circuit)) {
                continue; // the grounds of many lamps: each lamp's own circuit leads there from the battery
            }
            assertFalse(sources.isEmpty(), circuit + " is drawn without the battery");
            Set<Point> reached = shown.from(sources);
            assertTrue(reached.containsAll(shown.own()), circuit + ": the battery leads to "
                    + reached + ", not to all of " + shown.own());
            if (reached.stream().anyMatch(each -> ways.height(each) == 0)) {
                grounded.add(circuit);
            }
        }
        assertTrue(grounded.containsAll(Set.of("10", "11", "16", "17", "18", "19", "20", "25", "26", "35")),
                grounded.toString());
        Shown side = shown(front, ways, "20");
        assertTrue(side.wires().stream().anyMatch(each -> each.startsWith("dash70 ")), side.wires().toString());
        Shown dip = shown(front, ways, "16");
        assertEquals(Set.of("front 2a", "front 3a", "front 3b", "front 14a", "front 14b", "front 90a", "front 90e"),
                dip.wires(), "battery, fuse block, relay, splice, fuse; the lamp's own ground");
    }

    /** What all cars together are drawn with is, for one of them, what its own sheet draws. */
    @ParameterizedTest
    @ValueSource(strings = {ONE, "year 1964 and saloon and not deluxe and lhd and not heater and not fogLamps"
            + " and not towBar and not halogen and not headlampRelays and not electricFan and not ledTail"
            + " and not electronicFlasher and not electronicIgnition"})
    void eachCarFindsItsOwnWayInTheDiagramsOfAll(String words) throws Exception {
        Order every = examples.order(orrin, "frontKit", "");
        Order one = examples.order(orrin, "frontKit", words);
        LaidHarness front = every.harnesses().getFirst();
        LaidHarness alone = one.harnesses().getFirst();
        CurrentWays all = CurrentWays.of(every, front).orElseThrow();
        CurrentWays own = CurrentWays.of(one, alone).orElseThrow();
        assertTrue(all.apart().containsAll(Set.of("dash64", "dash67", "dash70")), all.apart().toString());
        int wires = 0;
        for (String circuit : List.of("1", "2", "10", "11", "14", "16", "20", "25", "30")) {
            Set<String> expected = around(alone, own, circuit, one.vehicles());
            assertEquals(expected, around(front, all, circuit, one.vehicles()), circuit);
            wires += (int) expected.stream().filter(each -> each.startsWith("dash")).count();
        }
        assertTrue(wires > 20, wires + " wires of the car's own");
    }

    private static Set<String> around(LaidHarness harness, CurrentWays ways, String circuit, Condition vehicles) {
        Map<Point, Condition> ends = new LinkedHashMap<>();
        harness.pieces().stream().filter(each -> each.circuit().equals(circuit)).forEach(piece -> piece.ends()
                .forEach(each -> ends.merge(ways.point(each.node()), piece.when(), Condition::or)));
        CurrentWays.Around around = ways.around(ends, edge -> inner(edge, harness, circuit));
        assertEquals(0, around.omitted());
        return around.ways().stream().filter(each -> !each.when().excludes(vehicles)).map(each -> (each.edge()
                .map(Edge::link).orElse(null) instanceof Link.OfWire wire ? wire.wire().owner() : "") + " "
                + each.from() + " " + each.to()).collect(Collectors.toCollection(TreeSet::new));
    }

    /** The car's wire has a name and a colour of its own in each of so many years. */
    private static String years(int count) {
        StringBuilder text = new StringBuilder("""
                catalogue c {
                    source accumulator "Accumulator" {
                        type battery
                        pins plus
                    }
                }
                platform p "P" {
                    supply 12 V negative ground
                    years 1901 .. %d
                    place a "Bulkhead"
                    place b "Lamp"
                    position main "Main"
                    position ours "Ours"
                    device battery "Battery" is accumulator at a
                }
                """.formatted(1900 + count));
        StringBuilder mates = new StringBuilder();
        for (int year = 1901; year <= 1900 + count; year++) {
            text.append("""
                    drawing d%1$d "Car" of p fills main when year = %1$d {
                        datum a
                        connector J at a
                        circuit x%1$d RD {
                            wire a 1 mm2 from battery:plus to J:1 length 1 m
                        }
                    }
                    """.formatted(year));
            mates.append("        mates J of d%1$d when year = %1$d%n".formatted(year));
        }
        return text + """
                harness h "Ours" of p fills ours {
                    datum a
                    branch lead from a to b 300 mm
                    connector A at a {
                %s    }
                    connector B on lead
                    circuit 1 "Lamp" RD {
                        wire a 1 mm2 from A:1 to B:1
                    }
                }
                """.formatted(mates);
    }

    @Test
    @Tag("outside")
    void whatComesInTooManyMakesIsLeftOutAndTheSheetSaysSo() throws Exception {
        for (int count : List.of(CurrentWays.MOST_APART, CurrentWays.MOST_APART + 1)) {
            var opened = examples.text(folder, years(count));
            String text = Outside.text(Examples.write(folder, examples.files(opened, "h", "",
                    SheetChoice.of(Paper.A4, SheetKind.CIRCUITS))).get("h-circuit-diagrams.pdf"))
                    .replaceAll("\\s+", " ");
            boolean few = count == CurrentWays.MOST_APART;
            assertEquals(!few, text.contains(count + " wires of the car are left out here"), text);
            assertEquals(few, text.contains("x1905a RD 1 mm2"), text);
            String one = Outside.text(Examples.write(folder, examples.files(opened, "h", "year = 1905",
                    SheetChoice.of(Paper.A4, SheetKind.CIRCUITS))).get("h-circuit-diagrams.pdf"))
                    .replaceAll("\\s+", " ");
            assertTrue(one.contains("x1905a RD 1 mm2"), one);
        }
    }

    /** Read back by poppler: the words from left to right, and dots of the inks in which wires are drawn. */
    @Test
    @Tag("outside")
    void aDiagramBeginsAtTheBatteryAndItsWiresHaveTheirColours() throws Exception {
        Path pdf = Examples.write(folder, examples.files(orrin, "frontKit", ONE,
                SheetChoice.of(Paper.A4, SheetKind.CIRCUITS))).get("front-circuit-diagrams.pdf");
        List<Outside.Word> words = Outside.words(pdf);
        int at = 0;
        while (!(words.get(at).text().equals("16") && words.get(at + 1).text().equals("Dip,"))) {
            at++;
        }
        Outside.Word heading = words.get(at);
        List<Outside.Word> below = words.stream().filter(each -> each.page() == heading.page()
                && each.top() > heading.bottom()).toList();
        double battery = below.stream().filter(each -> each.text().equals("battery"))
                .mapToDouble(Outside.Word::left).min().orElseThrow();
        double block = below.stream().filter(each -> each.text().equals("FB")).mapToDouble(Outside.Word::left).min()
                .orElseThrow();
        assertTrue(battery < block, "battery at " + battery + ", fuse block at " + block);
        assertTrue(below.stream().anyMatch(each -> each.text().equals("headLampL")), below.toString());
        assertTrue(below.stream().anyMatch(each -> each.text().equals("G1")), below.toString());
        Outside.needs("pdftoppm");
        Outside.run("pdftoppm", "-r", "100", "-aa", "no", "-f", Integer.toString(heading.page()), "-l",
                Integer.toString(heading.page()), pdf.toString(), folder.resolve("page").toString());
        Path picture;
        try (var files = Files.list(folder)) {
            picture = files.filter(each -> each.toString().endsWith(".ppm")).findFirst().orElseThrow();
        }
        byte[] bytes = Files.readAllBytes(picture);
        assertTrue(dots(bytes, 122, 72, 34) > 300, "brown of the feed");
        assertTrue(dots(bytes, 24, 84, 180) > 300, "blue of the dip wire");
        assertTrue(dots(bytes, 204, 24, 30) > 100, "red tracer");
    }

    private static long dots(byte[] bytes, int red, int green, int blue) {
        long count = 0;
        for (int i = bytes.length % 3; i + 2 < bytes.length; i += 3) {
            count += (bytes[i] & 255) == red && (bytes[i + 1] & 255) == green && (bytes[i + 2] & 255) == blue ? 1 : 0;
        }
        return count;
    }
}
