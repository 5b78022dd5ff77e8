// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;

/**
 * The trailer example against the published pin tables of ISO 11446 and ISO 1724. The figures and their sources stand
 * in {@code iso-11446.csv}, {@code iso-1724.csv} and {@code iec-60757.csv} beside this test.
 */
@Tag("outside")
class TrailerStandardsTest {

    private Project project;

    /** What a connector has in one cavity. */
    private record Core(String mm2, String colour) {
    }

    @BeforeEach
    void open() throws BadCall {
        project = Repository.example("trailer", Repository.reader()).project();
    }

    private static Map<String, Core> standard(String name) throws IOException {
        Map<String, String> codes = CsvTable.read("iec-60757.csv").stream()
                .collect(Collectors.toMap(row -> row.get("colour"), row -> row.get("code")));
        Map<String, Core> cores = new TreeMap<>();
        for (CSVRecord row : CsvTable.read(name)) {
            List<String> colours = new ArrayList<>();
            for (String word : row.get("colour").split("/")) {
                colours.add(codes.get(word));
            }
            cores.put(row.get("pin"), new Core(row.get("mm2") + " mm2", String.join("/", colours)));
        }
        return cores;
    }

    private WiringView drawing(String name) {
        return project.wiring(name).orElseThrow();
    }

    private static Map<String, Core> made(WiringView wiring, String connector) {
        Map<String, Core> cores = new TreeMap<>();
        wires(wiring, connector).forEach((pin, wire) -> cores.put(pin,
                new Core(wire.sizes().getFirst().value().written(), wire.colours().getFirst().value().toString())));
        return cores;
    }

    private static Map<String, WireView> wires(WiringView wiring, String connector) {
        Map<String, WireView> wires = new TreeMap<>();
        for (WireView wire : wiring.wires()) {
            for (List<Case<Node>> ends : List.of(wire.from(), wire.to())) {
                for (Case<Node> end : ends) {
                    if (end.value().element().equals(connector)) {
                        assertEquals(null, wires.put(end.value().pin(), wire), "two wires in one cavity");
                    }
                }
            }
        }
        return wires;
    }

    @ParameterizedTest
    @CsvSource({"car13, X1, iso-11446.csv", "trailer13, P13, iso-11446.csv", "trailer7, P7, iso-1724.csv"})
    void everyPinHasTheCoreOfTheStandard(String drawing, String connector, String table) throws IOException {
        assertEquals(standard(table), made(drawing(drawing), connector));
    }

    @Test
    void theAdaptorIsOneStandardOnTheOtherWithoutAChangeOfColour() throws IOException {
        Map<String, Core> seven = standard("iso-1724.csv");
        assertEquals(seven, made(drawing("adaptor13to7"), "A7"));
        assertEquals(seven, made(drawing("adaptor13to7"), "A13"));
    }

    @Test
    void thirteenPinsHaveSevenThinAndFiveThickCores() {
        Map<String, Long> bySize = made(drawing("car13"), "X1").values().stream()
                .collect(Collectors.groupingBy(Core::mm2, Collectors.counting()));
        assertEquals(Map.of("1.5 mm2", 7L, "2.5 mm2", 5L), bySize);
    }

    /** The three returns must not be joined on the trailer (note to the pin table that Plastimat prints). */
    @Test
    void theThreeReturnsAreCircuitsOfTheirOwn() {
        Map<String, WireView> wires = wires(drawing("trailer13"), "P13");
        assertEquals(3, List.of("3", "11", "13").stream().map(pin -> wires.get(pin).circuit().name().text()).distinct()
                .count());
    }
}
