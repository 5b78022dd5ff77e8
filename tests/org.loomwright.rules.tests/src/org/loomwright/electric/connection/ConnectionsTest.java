// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.rules.Bench;

class ConnectionsTest {

    private static Point spot(Node.Kind kind, String owner, String element, String pin) {
        return new Point.Spot(new Node(kind, owner, element, pin));
    }

    private static List<Connections> networks(Bench bench) {
        Project project = bench.project();
        PlatformView platform = project.platforms().get("orrin");
        return Fitment.of(project, platform).stream().map(Connections::of).toList();
    }

    /** Battery, link, fuse, switch, relay, bulkhead connection, lamp and ground, in two drawings. */
    private static Bench car() {
        return new Bench().upgrade("fan").ground("body", false).ground("shell", true).place("bulkhead", "")
                .part(Part.Kind.SOURCE, "battery12", part -> part.pins("pos", "neg")
                        .word(Part.WordKind.POLARITY, "pos"))
                .part(Part.Kind.FUSIBLE_LINK, "link14", "1", "2")
                .part(Part.Kind.FUSE, "blade10", "1", "2")
                .part(Part.Kind.SWITCH, "pull", "1", "2")
                .part(Part.Kind.RELAY, "relay30", part -> part.pins("30", "87", "85", "86")
                        .joins(false, "30", "87", "5 mohm", "closed"))
                .part(Part.Kind.LAMP, "lamp45", "1", "2")
                .part(Part.Kind.HOUSING, "way4", "1", "2", "3", "4")
                .device("battery", "battery12", "", "body", "")
                .device("lampL", "lamp45", "", "", "")
                .device("knob", "pull", "", "", "")
                .drawing("dash64", "dash", "", wiring -> wiring
                        .device("L1", "link14", "", "", "").device("F1", "blade10", "", "", "")
                        .device("K1", "relay30", "", "", "")
                        .stud("G0", "", "body", "")
                        .connector("J7", "way4", "bulkhead", "", "")
                        .circuit("1", "", circuit -> circuit
                                .wire("a", "10 ga", "battery:pos", "L1:1", "").wire("b", "10 ga", "L1:2", "F1:1", "")
                                .wire("c", "14 ga", "F1:2", "knob:1", "").wire("d", "18 ga", "knob:2", "K1:86", "")
                                .wire("e", "14 ga", "F1:2", "K1:30", "").wire("f", "14 ga", "K1:87", "J7:3", "")
                                .wire("g", "18 ga", "K1:85", "G0", "")))
                .drawing("front64", "front", "", wiring -> wiring
                        .connector("J1", "way4", "bulkhead", "J7 of dash64", "", wiring.map("1", "3"))
                        .connector("H1", "way4", "", "lampL", "")
                        .stud("G1", "", "body", "not fan")
                        .circuit("12", "", circuit -> circuit.wire("a", "14 ga", "J1:1", "H1:1", ""))
                        .circuit("2", "", circuit -> circuit.wire("a", "14 ga", "H1:2", "G1", "")));
    }

    @Test
    void currentFindsItsWayFromTheBatteryToTheLampThroughTheMap() {
        Connections network = networks(car()).getFirst();
        Reach fed = network.fed(supply -> true, edge -> true);
        assertTrue(fed.at(spot(Node.Kind.PIN, "orrin", "lampL", "1")).isAlways());
        assertTrue(fed.at(spot(Node.Kind.PIN, "orrin", "lampL", "2")).isNever());
        assertTrue(fed.at(spot(Node.Kind.PIN, "dash64", "K1", "86")).isAlways());
        assertTrue(fed.at(spot(Node.Kind.CAVITY, "front64", "J1", "3")).isNever());
        assertEquals(List.of("battery:pos", "L1:1", "L1:2", "F1:1", "F1:2", "K1:30", "K1:87", "J7:3", "J1:1", "H1:1",
                "lampL:1"), Path.find(network, Map.of(spot(Node.Kind.PIN, "orrin", "battery", "pos"),
                        network.fitment().domain()), spot(Node.Kind.PIN, "orrin", "lampL", "1"),
                network.fitment().domain(), edge -> true).orElseThrow().stream().map(Point::toString).toList());
    }

    @Test
    void protectionIsThatOfThePart() {
        Connections network = networks(car()).getFirst();
        assertEquals(List.of(Protection.LINK, Protection.FUSE), network.edges().stream().map(Edge::protection)
                .filter(protection -> protection != Protection.NONE).sorted().toList());
        Reach bare = network.fed(supply -> true, edge -> edge.protection() == Protection.NONE);
        assertTrue(bare.at(spot(Node.Kind.PIN, "dash64", "L1", "1")).isAlways());
        assertTrue(bare.at(spot(Node.Kind.PIN, "dash64", "L1", "2")).isNever());
    }

    @Test
    void groundIsReachedWhereTheStudIs() {
        Connections network = networks(car()).getFirst();
        Reach ground = network.from(network.grounds(), edge -> true);
        assertEquals("not fan", ground.at(spot(Node.Kind.PIN, "orrin", "lampL", "2")).words());
        assertFalse(network.grounds().containsKey(new Point.Ground("orrin", "shell")));
    }

    @Test
    void loadsAreLampAndCoil() {
        Connections network = networks(car()).getFirst();
        assertEquals(List.of("lampL: 1, 2", "K1: 85, 86"), network.loads().stream().map(load -> load.device().name()
                + ": " + String.join(", ", load.pins().stream().map(pin -> ((Point.Spot) pin).node().pin()).toList()))
                .toList());
    }

    @Test
    void aHarnessOfOursTakesThePlaceOfWhatItCovers() {
        Bench bench = car().harness("front", wiring -> wiring.covers("front64")
                .connector("J1", "way4", "bulkhead", "J7 of dash64", "", wiring.map("2", "3"))
                .connector("H1", "way4", "", "lampL", "")
                .circuit("12", "", circuit -> circuit.wire("a", "14 ga", "J1:2", "H1:1", "")));
        List<Connections> networks = networks(bench);
        assertEquals(List.of("as the factory wired it", "with harness front"),
                networks.stream().map(network -> network.fitment().words()).toList());
        assertEquals(List.of("dash64", "front"), List.copyOf(networks.get(1).fitment().fitted().keySet()));
        assertTrue(networks.get(1).fed(supply -> true, edge -> true).at(spot(Node.Kind.PIN, "orrin", "lampL", "1"))
                .isAlways());
    }

    @Test
    void harnessesOfOneKitAreFittedTogether() {
        Bench bench = car()
                .harness("front", wiring -> wiring.covers("front64").connector("J1", "way4", "", "J7 of dash", ""))
                .harness("dash", wiring -> wiring.covers("dash64").connector("J7", "way4", "", "", ""))
                .harness("spare", wiring -> wiring.covers("front64"))
                .kit("whole", "front", "dash");
        List<Connections> networks = networks(bench);
        assertEquals(List.of("as the factory wired it", "with kit whole", "with harness spare"),
                networks.stream().map(network -> network.fitment().words()).toList());
        assertEquals(List.of("front", "dash"), List.copyOf(networks.get(1).fitment().fitted().keySet()));
    }

    @Test
    void theFactorysHarnessStaysInVehiclesThatOursIsNotFor() {
        Bench bench = new Bench().upgrade("fan").place("p", "")
                .drawing("front64", "front", "", wiring -> { })
                .wiring(org.loomwright.harness.Wiring.Kind.HARNESS, "cooling", "front", "fan", wiring -> { });
        Fitment ours = networks(bench).get(1).fitment();
        assertEquals("fan", ours.domain().words());
        assertEquals(List.of("cooling"), List.copyOf(ours.fitted().keySet()));
    }

    @Test
    void whatMatesNothingIsOpen() {
        Bench bench = car().harness("tail", wiring -> wiring
                .connector("T1", "way4", "", "", "")
                .circuit("9", "", circuit -> circuit.wire("a", "18 ga", "T1:1", "T1:2", "fan")));
        Connections network = networks(bench).get(1);
        assertEquals(List.of("T1:1", "T1:2"), network.open().keySet().stream().map(Point::toString).toList());
        assertTrue(networks(bench).getFirst().open().isEmpty());
    }

    @Test
    void aMapOnEitherHalfSaysWhichCavitiesMeet() {
        Bench bench = new Bench().place("p", "").part(Part.Kind.HOUSING, "way3", "1", "2", "3")
                .harness("a", wiring -> wiring.connector("J1", "way3", "p", "K1", "")
                        .connector("K1", "way3", "p", "", "", wiring.map("1", "2"), wiring.map("2", "1")));
        Connections network = networks(bench).getFirst();
        assertEquals(List.of("J1:1 K1:2", "J1:2 K1:1", "J1:3 K1:3"),
                network.edges().stream().map(edge -> edge.a() + " " + edge.b()).toList());
    }

    @Test
    void aSwitchOnAGroundNodeGroundsItsPin() {
        Bench bench = new Bench().ground("body", false).part(Part.Kind.SWITCH, "push", "1")
                .part(Part.Kind.SWITCH, "two", part -> part.pins("1", "case").joins(false, "1", "case", "", ""))
                .device("horn", "push", "", "body", "").device("door", "two", "", "body", "");
        Connections network = networks(bench).getFirst();
        Reach ground = network.from(network.grounds(), edge -> true);
        assertTrue(ground.at(spot(Node.Kind.PIN, "orrin", "horn", "1")).isAlways());
        assertTrue(ground.at(spot(Node.Kind.PIN, "orrin", "door", "1")).isAlways());
    }

    @Test
    void aWireOfFusibleLinkCableIsALinkWhereItsCableIsOne() {
        Bench bench = new Bench().upgrade("fan").place("p", "").part(Part.Kind.HOUSING, "way3", "1", "2", "3")
                .part(Part.Kind.FUSIBLE_LINK, "fl")
                .harness("a", wiring -> wiring.connector("J1", "way3", "p", "", "").circuit("1", "", circuit -> circuit
                        .wire("a", "", wire -> wire.from("J1:1", "").to("J1:2", "").cable("fl"))));
        assertEquals(List.of(Protection.LINK),
                networks(bench).getFirst().edges().stream().map(Edge::protection).toList());
    }

    @Test
    void aConditionOnAnEdgeHoldsForAllBehindIt() {
        Connections network = networks(car()).getFirst();
        Condition fan = network.fitment().platform().vehicles().resolve(
                new org.loomwright.condition.Expression.Choice("fan")).condition();
        Reach reach = network.from(Map.of(spot(Node.Kind.STUD, "front64", "G1", ""), fan.not()), edge -> true);
        assertEquals("not fan", reach.at(spot(Node.Kind.CAVITY, "front64", "H1", "2")).words());
    }
}
