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
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
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
        for (CurrentWays.Way way : ways.around(ends, edge -> inner(edge, harness, circuit))) {
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

    @Test
    void whatDiffersInTheCarIsNotFollowedForManyVehicles() throws Exception {
        Order order = examples.order(orrin, "frontKit", "");
        LaidHarness front = order.harnesses().getFirst();
        CurrentWays ways = CurrentWays.of(order, front).orElseThrow();
        assertTrue(ways.apart().containsAll(Set.of("dash64", "dash67", "dash70")), ways.apart().toString());
        Set<String> wires = shown(front, ways, "20").wires();
        assertTrue(wires.stream().noneMatch(each -> each.startsWith("dash")), wires.toString());
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
