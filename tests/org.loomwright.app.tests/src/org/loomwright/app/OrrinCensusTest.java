// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Platform;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** How large the Orrin is, and that everything which may be chosen about it changes some wiring. */
class OrrinCensusTest {

    private final EditedExample example = new EditedExample("orrin");
    private Project project;

    @BeforeEach
    void open() throws BadCall {
        project = example.open().project();
    }

    private static List<String> names(List<WiringView> views) {
        return views.stream().map(WiringView::name).sorted().toList();
    }

    @Test
    void theCensus() {
        assertEquals(List.of("car56", "car60", "dash64", "dash67", "dash70", "engine64", "engine67", "engine70",
                "front64", "front67", "front70", "frontCoupe", "rear64", "rear70", "rearCoupe", "rearEstate64",
                "rearEstate70"), names(project.drawings()));
        assertEquals(List.of("engineLead", "front", "hazard", "rear"), names(project.harnesses()));
        assertEquals(Set.of("frontKit", "rearKit", "flasherKit", "engineKit"), project.kits().keySet());
        assertEquals(Set.of("orrin", "orrin900"), project.platforms().keySet());
        assertEquals("43920", vehicles("orrin"));
        assertEquals("52", vehicles("orrin900"));
        List<WiringView.CircuitView> circuits = project.wirings().values().stream()
                .flatMap(view -> view.circuits().stream()).toList();
        assertEquals(264, circuits.size());
        assertEquals(127, circuits.stream().map(each -> each.circuit().name() + " " + each.circuit().title())
                .distinct().count());
    }

    private String vehicles(String platform) {
        return project.platforms().get(platform).vehicles().count().toString();
    }

    @Test
    void theVehiclesOfTheSisterAreCountedByHand() {
        // Saloon: 7 years x heater or not x radio or not; van: 6 years (none of 1956) x 4.
        assertEquals(7 * 4 + 6 * 4, project.platforms().get("orrin900").vehicles().count().intValueExact());
    }

    @ParameterizedTest
    @CsvSource({"orrin,frontLighting", "orrin,dash", "orrin,engineBayWiring", "orrin,rearBody", "orrin900,wholeCar"})
    void everyVehicleHasOneDrawingInEachPosition(String platform, String position) {
        PlatformView view = project.platforms().get(platform);
        Condition served = view.vehicles().none();
        for (WiringView drawing : project.drawings()) {
            if (drawing.platform() == view && drawing.wiring().position().orElseThrow().text().equals(position)) {
                assertTrue(served.excludes(drawing.when()), drawing::name);
                served = served.or(drawing.when());
            }
        }
        assertEquals(view.vehicles().all(), served);
    }

    /** Each option, upgrade and group, by the elements of drawings and harnesses that depend on it. */
    @ParameterizedTest
    @ValueSource(strings = {"orrin", "orrin900"})
    void everythingThatMayBeChosenChangesSomeWiring(String name) {
        PlatformView platform = project.platforms().get(name);
        Set<String> felt = project.wirings().values().stream().filter(view -> view.platform() == platform)
                .flatMap(OrrinCensusTest::conditions).map(Condition::words).distinct()
                .flatMap(words -> Stream.of(words.split("\\W+"))).collect(Collectors.toCollection(TreeSet::new));
        Set<String> chosen = new TreeSet<>();
        platform.platform().options().forEach(option -> chosen.add(option.name().text()));
        for (Platform.Group group : platform.platform().groups()) {
            // Of a group of two the shortest words may name either.
            assertTrue(group.members().stream().anyMatch(member -> felt.contains(member.name().text())),
                    () -> group.name().text());
        }
        assertTrue(chosen.size() >= 2);
        chosen.removeAll(felt);
        assertEquals(Set.of(), chosen);
    }

    private static Stream<Condition> conditions(WiringView view) {
        Stream<Condition> wires = view.wires().stream().flatMap(OrrinCensusTest::conditions);
        Stream<Condition> connectors = view.connectors().values().stream().flatMap(each -> Stream.concat(
                Stream.of(each.when()), each.housings().stream().map(Case::when)));
        Stream<Condition> devices = view.devices().values().stream()
                .flatMap(each -> each.parts().stream().map(Case::when));
        Stream<Condition> runs = view.wiring().runs().stream()
                .map(run -> view.platform().vehicles().resolve(run.when()).condition());
        return Stream.of(wires, connectors, devices, runs).flatMap(each -> each);
    }

    private static Stream<Condition> conditions(WireView wire) {
        return Stream.of(Stream.of(wire.when()), wire.sizes().stream().map(Case::when),
                wire.from().stream().map(Case::when), wire.to().stream().map(Case::when),
                wire.lengths().stream().map(Case::when)).flatMap(each -> each);
    }

    /** The sister has its plus pole at ground; whoever forgets that is told. */
    @Test
    void theSisterIsWiredForPlusAtGround() throws BadCall {
        assertEquals(List.of(), check(example, "wrong-polarity"));
        EditedExample turned = example.with("car-1960.loom", "F1:load to radioSet:minus", "F1:load to radioSet:plus")
                .with("car-1960.loom", "BK from radioSet:plus to G3", "BK from radioSet:minus to G3");
        assertEquals(List.of("orrin900:radioSet"), check(turned, "wrong-polarity"));
        EditedExample battery = example.with("orrin-900.loom", "is battery6 at", "is battery12 at");
        assertTrue(check(battery, "wrong-polarity").contains("orrin900:battery"));
    }

    private static List<String> check(EditedExample example, String rule) throws BadCall {
        return StandardRules.engine().check(example.open().project(), Settings.TIMELESS, Cancel.NEVER, Progress.NONE)
                .of(rule).stream().filter(Finding::counts).map(Finding::element).toList();
    }

    /** Lamps of the sister are 6 V lamps, those of the 1200 are not. */
    @Test
    void eachPlatformHasPartsOfItsOwnVoltage() throws BadCall {
        assertEquals(List.of(), check(example, "wrong-system-voltage"));
        assertEquals(List.of("orrin900:headLampL"), check(example.with("orrin-900.loom",
                "\"Left headlamp\" is headlamp6", "\"Left headlamp\" is sealedBeam50"), "wrong-system-voltage"));
    }
}
