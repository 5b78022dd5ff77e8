// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.rules.Bench;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Laying;

class BendTooTightTest {

    private static final String RULE = "bend-too-tight";

    private final Laying lay = new Laying();

    private static Bench bench() {
        return new Bench().upgrade("fan", "halogen").place("bulkhead", "").place("nose", "")
                .part(Part.Kind.CABLE, "pvc", part -> part.size("14 ga", "3 mm").size("10 ga", "4.6 mm"))
                .part(Part.Kind.CABLE, "stiff", part -> part.size("14 ga", "3 mm")
                        .figure(FigureKind.RADIUS, "60 mm", ""))
                .part(Part.Kind.CABLE, "bare", part -> { })
                .part(Part.Kind.COVERING, "conduit", part -> part.figure(FigureKind.RADIUS, "45 mm", ""))
                .part(Part.Kind.HOUSING, "way12", "1", "2", "3");
    }

    /** A trunk of 1 m with a bend; wires from its start to its end. */
    private Bench bent(String bend, Consumer<Bench.WiringBench> more) {
        return bench().harness("front", wiring -> {
            wiring.cable("pvc").datum("bulkhead").add(lay.trunk("main", bend, "wing 1000 mm"),
                    lay.branch("bNose", "wing", "nose", "200 mm", ""))
                    .connector("J1", "way12", "bulkhead", "", "").connector("N1", "way12", "nose", "", "")
                    .circuit("12", "", circuit -> circuit.wire("a", "", wire -> wire.size("14 ga", "")
                            .from("J1:1", "").to("N1:1", "")));
            more.accept(wiring);
        });
    }

    private static List<String> found(Bench bench) {
        return bench.check(RULE).stream().map(finding -> finding.severity() + " " + finding.element() + ": "
                + finding.affected().map(Finding.Affected::words).orElse("")).toList();
    }

    @Tag("outside")
    @ParameterizedTest
    @CsvFileSource(resources = "bend-radius.csv")
    void theLeastRadiusOfAWire(int radius, boolean allowed) {
        assertEquals(allowed ? List.of() : List.of("WARNING front:sill: every vehicle"),
                found(bent("( sill 500 mm " + radius, wiring -> { })));
    }

    @Test
    void itSaysWhichWireNeedsHowMuch() {
        Finding finding = bent("( sill 500 mm 25", wiring -> { }).check(RULE).getFirst();
        assertEquals("bend sill of 25 mm is too tight for wire 12a, which needs 30.0 mm", finding.sentence());
        assertEquals(List.of("wire 12a: 10 x 3.0 mm over the insulation (catalogue, pvc 14 ga) = 30.0 mm"),
                finding.derivation());
    }

    /** 4.6 mm x 10 with a fan, 3 mm x 10 without. */
    @Test
    void onlyTheVehiclesWithTheThickWire() {
        Bench bench = bent("( sill 500 mm 40", wiring -> wiring.circuit("40", "", circuit -> circuit.wire("a", "fan",
                wire -> wire.size("10 ga", "").from("J1:2", "").to("N1:2", ""))));
        assertEquals(List.of("WARNING front:sill: fan"), found(bench));
    }

    @Test
    void onlyTheVehiclesWithTheBend() {
        assertEquals(List.of("WARNING front:sill: halogen"), found(bent("( sill 500 mm 20 mm halogen", wiring -> { })));
    }

    @Test
    void whatTheCatalogueStatesComesFirst() {
        Bench bench = bent("( sill 500 mm 50", wiring -> wiring.circuit("40", "", circuit -> circuit.wire("a", "",
                wire -> wire.size("14 ga", "").cable("stiff", "").from("J1:2", "").to("N1:2", ""))));
        assertEquals("bend sill of 50 mm is too tight for wire 40a, which needs 60.0 mm",
                bench.check(RULE).getFirst().sentence());
    }

    @Test
    void aCoveringOverTheBend() {
        assertEquals(List.of("WARNING front:sill: every vehicle"), found(bent("( sill 500 mm 40", wiring -> wiring
                .add(lay.fit("c1", "conduit", "main 600 mm", "main 400 mm", "")))));
        assertEquals(List.of(), found(bent("( sill 500 mm 40", wiring -> wiring
                .add(lay.fit("c1", "conduit", "main 600 mm", "main 700 mm", "")))));
    }

    /** Bare, 14 ga is 1.5 mm thick: 20 mm may be enough, 10 mm is not. */
    @Test
    void aWireOfUnknownThicknessIsNotJudgedUnlessTheBareConductorIsTooThick() {
        Consumer<Bench.WiringBench> unknown = wiring -> wiring.circuit("40", "", circuit -> circuit.wire("a", "",
                wire -> wire.size("10 ga", "").cable("bare", "").from("J1:2", "").to("N1:2", "")));
        assertEquals(List.of("NOTE front:sill: every vehicle"), found(bent("( sill 500 mm 32", unknown)));
        assertEquals(List.of("WARNING front:sill: every vehicle"), found(bent("( sill 500 mm 20", unknown)));
    }

    @Test
    void aBendWhereNoWireRuns() {
        assertEquals(List.of(), found(bent("( sill 1200 mm 5", wiring -> { })));
    }
}
