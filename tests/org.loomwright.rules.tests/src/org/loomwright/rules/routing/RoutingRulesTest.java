// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.Part.WordKind;
import org.loomwright.harness.Wiring;
import org.loomwright.rules.Bench;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Laying;
import org.loomwright.rules.Severity;

class RoutingRulesTest {

    private final Laying lay = new Laying();

    private static Bench bench() {
        return new Bench().upgrade("fan", "halogen").ground("body", false).zone("engineBay", "80 C")
                .zone("cabin", "50 C").place("bulkhead", "cabin").place("box", "cabin").place("nose", "engineBay")
                .place("tail", "cabin")
                .part(Part.Kind.CABLE, "pvc80", part -> part.figure(FigureKind.TEMPERATURE, "80 C", ""))
                .part(Part.Kind.CABLE, "xlpe", part -> part.figure(FigureKind.TEMPERATURE, "125 C", ""))
                .part(Part.Kind.CABLE, "bare", part -> { })
                .part(Part.Kind.HOUSING, "way12", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12")
                .part(Part.Kind.CLIP, "bodyClip", part -> { })
                .part(Part.Kind.OPENING, "hole", part -> { })
                .part(Part.Kind.COVERING, "gaiter", part -> part.word(WordKind.TYPE, "flex"))
                .part(Part.Kind.COVERING, "sleeve", part -> { });
    }

    private static List<String> found(Bench bench, String rule) {
        return bench.check(rule).stream().map(finding -> finding.severity() + " " + finding.element() + ": "
                + finding.affected().map(Finding.Affected::words).orElse("")).toList();
    }

    // ---- zone-too-hot-for-insulation

    private Bench wire(String from, String to, Consumer<Bench.WireBench> more) {
        return bench().harness("front", wiring -> wiring(wiring, from, to, more));
    }

    private void wiring(Bench.WiringBench wiring, String from, String to, Consumer<Bench.WireBench> more) {
        wiring.cable("xlpe").datum("bulkhead").branch("bBox", "bulkhead", "box", "300 mm")
                .branch("bNose", "bulkhead", "nose", "900 mm").branch("bTail", "bulkhead", "tail", "2 m")
                .connector("J1", "way12", "bulkhead", "", "").connector("B1", "way12", "box", "", "")
                .connector("N1", "way12", "nose", "", "").connector("T1", "way12", "tail", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "", wire -> {
                    wire.size("14 ga", "").from(from, "").to(to, "");
                    more.accept(wire);
                }));
    }

    @Test
    void aCableThatIsMadeForNoMoreThanTheZone() {
        assertEquals(List.of(), found(wire("J1:1", "N1:1", wire -> { }), "zone-too-hot-for-insulation"));
        Bench bench = wire("J1:1", "N1:1", wire -> wire.cable("pvc80", "fan"));
        assertEquals(List.of("ERROR front:12a: fan"), found(bench, "zone-too-hot-for-insulation"));
        Finding finding = bench.check("zone-too-hot-for-insulation").getFirst();
        assertEquals("wire 12a of pvc80 is insulated for 80 C and touches zone engineBay of 80 C", finding.sentence());
        assertEquals(List.of("pvc80: 80 C", "nose lies in zone engineBay: 80 C, not below 80 C"), finding.derivation());
    }

    @Test
    void aWireThatStaysWhereItIsCooler() {
        assertEquals(List.of(), found(wire("J1:1", "B1:1", wire -> wire.cable("pvc80")),
                "zone-too-hot-for-insulation"));
        assertEquals(List.of(), found(wire("J1:1", "N1:1", wire -> wire.cable("bare")),
                "zone-too-hot-for-insulation"));
    }

    /** A branch that leaves the end of the one to the nose: the wire passes the nose. */
    @Test
    void aWireThatOnlyPasses() {
        Bench bench = bench().harness("front", wiring -> wiring.cable("pvc80").datum("bulkhead")
                .branch("bNose", "bulkhead", "nose", "900 mm").branch("bTail", "bNose", "tail", "2 m")
                .connector("J1", "way12", "bulkhead", "", "").connector("T1", "way12", "tail", "", "")
                .circuit("12", "", circuit -> circuit.wire("a", "14 ga", "J1:1", "T1:1", "halogen")));
        assertEquals(List.of("ERROR front:12a: halogen"), found(bench, "zone-too-hot-for-insulation"));
    }

    /** The wire ends at the nose with halogen lamps and at the cool tail without. */
    @Test
    void anEndCountsInTheVehiclesThatHaveIt() {
        Bench bench = bench().harness("front", wiring -> wiring.cable("pvc80").datum("bulkhead")
                .branch("bNose", "bulkhead", "nose", "900 mm").branch("bTail", "bulkhead", "tail", "2 m")
                .connector("J1", "way12", "bulkhead", "", "").connector("N1", "way12", "nose", "", "")
                .connector("T1", "way12", "tail", "", "").circuit("12", "", circuit -> circuit.wire("a", "",
                        wire -> wire.size("14 ga", "").from("J1:1", "").to("N1:1", "halogen")
                                .to("T1:1", "not halogen"))));
        assertEquals(List.of("ERROR front:12a: halogen"), found(bench, "zone-too-hot-for-insulation"));
    }

    @Test
    void onADrawingItIsInherited() {
        Bench bench = bench().drawing("front64", "", "", wiring -> wiring(wiring, "J1:1", "N1:1",
                wire -> wire.cable("pvc80")));
        assertTrue(bench.check("zone-too-hot-for-insulation").getFirst().inherited());
    }

    // ---- splices-not-staggered

    private Bench splices(String first, String second, String condition) {
        return bench().harness("front", wiring -> wiring.datum("bulkhead")
                .add(lay.trunk("main", "wing 900 mm", "end 2 m"),
                        lay.branch("bNose", "wing", "nose", "900 mm", ""))
                .circuit("12", condition.equals("fan") ? "not fan" : "",
                        circuit -> circuit.splice("S12", lay.at(first), ""))
                .circuit("13", condition, circuit -> circuit.splice("S13", lay.at(second), "")));
    }

    @Test
    void splicesSideBySide() {
        Bench bench = splices("main 700 mm", "main 735 mm", "halogen");
        assertEquals(List.of("WARNING front:S13: halogen"), found(bench, "splices-not-staggered"));
        Finding finding = bench.check("splices-not-staggered").getFirst();
        assertEquals("splices S12 and S13 lie 35 mm apart on main, less than 40 mm", finding.sentence());
        assertEquals(List.of("735 mm - 700 mm = 35 mm, less than 40 mm (common practice)"), finding.derivation());
    }

    @Test
    void splicesThatKeepTheirDistance() {
        assertEquals(List.of(), found(splices("main 700 mm", "main 740 mm", ""), "splices-not-staggered"));
        assertEquals(List.of(), found(splices("main 700 mm", "bNose 700 mm", ""), "splices-not-staggered"));
        assertEquals(List.of(), found(splices("wing", "wing", ""), "splices-not-staggered"));
        assertEquals(List.of(), found(splices("main 700 mm", "main 700 mm", "fan"), "splices-not-staggered"));
    }

    // ---- splice-in-flex-or-opening

    private Bench splice(String at, Wiring.Placed... placed) {
        return bench().harness("front", wiring -> wiring.datum("bulkhead")
                .add(lay.trunk("main", "| hinge 500 mm", "wing 900 mm", "end 2 m"),
                        lay.branch("bNose", "wing", "nose", "900 mm", "")).add(placed)
                .circuit("12", "", circuit -> circuit.splice("S12", lay.at(at), "")));
    }

    @Test
    void aSpliceNearAnOpening() {
        Bench bench = splice("main 251 mm", lay.fit("g1", "hole", "main 300 mm", "fan"));
        assertEquals(List.of("WARNING front:S12: fan"), found(bench, "splice-in-flex-or-opening"));
        assertEquals("splice S12 lies 49 mm from opening g1",
                bench.check("splice-in-flex-or-opening").getFirst().sentence());
        assertEquals(List.of(), found(splice("main 250 mm", lay.fit("g1", "hole", "main 300 mm", "")),
                "splice-in-flex-or-opening"));
    }

    /** 20 mm behind the wing on the branch, and 20 mm before it on the trunk. */
    @Test
    void theDistanceIsCountedAlongTheHarness() {
        Bench bench = splice("bNose 20 mm", lay.fit("g1", "hole", "main 880 mm", ""));
        assertEquals("splice S12 lies 40 mm from opening g1",
                bench.check("splice-in-flex-or-opening").getFirst().sentence());
        assertEquals(List.of(), found(splice("bNose 20 mm", lay.fit("g1", "hole", "main 870 mm", "")),
                "splice-in-flex-or-opening"));
    }

    @Test
    void aSpliceAtAHingeAndInAStretchThatFlexes() {
        assertEquals("splice S12 lies in barrier hinge", splice("main 500 mm").check("splice-in-flex-or-opening")
                .getFirst().sentence());
        Bench flexes = splice("main 1300 mm", lay.fit("f1", "gaiter", "main 1200 mm", "main 1500 mm", ""));
        assertEquals("splice S12 lies in flexing f1", flexes.check("splice-in-flex-or-opening").getFirst().sentence());
        assertEquals(List.of(), found(splice("main 1300 mm", lay.fit("f1", "sleeve", "main 1200 mm", "main 1500 mm",
                "")), "splice-in-flex-or-opening"));
        assertEquals(List.of(), found(splice("main 1100 mm", lay.fit("f1", "gaiter", "main 1200 mm", "main 1500 mm",
                "")), "splice-in-flex-or-opening"));
    }

    /** A grommet at a barrier is one thing, and is called by its part. */
    @Test
    void oneFindingForAGrommetAtABarrier() {
        assertEquals(List.of("splice S12 lies 10 mm from opening g1"),
                splice("main 490 mm", lay.fit("g1", "hole", "main 500 mm", "")).check("splice-in-flex-or-opening")
                        .stream().map(Finding::sentence).toList());
    }

    // ---- clamp-spacing

    private Bench held(Wiring.Placed... placed) {
        return bench().harness("front", wiring -> wiring.datum("bulkhead")
                .add(lay.trunk("main", "wing 900 mm", "end 3 m"),
                        lay.branch("bNose", "wing", "nose", "900 mm", "")).add(placed));
    }

    /** FAA AC 43.13-1B and 46 CFR: supports at most 24 in, 610 mm, apart. */
    @Tag("outside")
    @ParameterizedTest
    @CsvFileSource(resources = "support-spacing.csv")
    void theGreatestDistanceOfSupports(String distance, boolean allowed) {
        Bench bench = bench().harness("front", wiring -> wiring.datum("bulkhead")
                .add(lay.trunk("main", "c1 100 mm"), lay.branch("bNose", "c1", "nose", "3 m", ""))
                .add(lay.fit("k1", "bodyClip", "c1", ""), lay.fit("k2", "bodyClip", "bNose 0 mm", ""),
                        lay.fit("k3", "bodyClip", "bNose " + distance, "")));
        assertEquals(allowed ? List.of() : List.of("WARNING front:k3: every vehicle"), found(bench, "clamp-spacing"));
    }

    @Test
    void aClipThatOnlySomeVehiclesHave() {
        Bench bench = held(lay.fit("k1", "bodyClip", "main 600 mm", ""), lay.fit("k2", "bodyClip", "main 1000 mm",
                "fan"), lay.fit("k3", "bodyClip", "main 1400 mm", "halogen"), lay.fit("k4", "bodyClip", "main 1600 mm",
                        ""));
        assertEquals(List.of("WARNING front:k3: not fan and halogen", "WARNING front:k4: not fan and not halogen"),
                found(bench, "clamp-spacing"));
        assertEquals("nothing holds main for 800 mm between clip k1 at 600 mm and clip k3 at 1400 mm",
                bench.check("clamp-spacing").getFirst().sentence());
    }

    @Test
    void theDatumAndOpeningsHoldToo() {
        assertEquals(List.of("nothing holds main for 700 mm between the datum and clip k1 at 700 mm"),
                held(lay.fit("k1", "bodyClip", "main 700 mm", "")).check("clamp-spacing").stream()
                        .map(Finding::sentence).toList());
        assertEquals(List.of(), found(held(lay.fit("g1", "hole", "main 200 mm", ""),
                lay.fit("k1", "bodyClip", "main 700 mm", "")), "clamp-spacing"));
    }

    @Test
    void aRunWithoutAClipIsNotAsked() {
        assertEquals(List.of(), found(held(), "clamp-spacing"));
        assertEquals(List.of(), found(held(lay.fit("g1", "hole", "main 900 mm", "")), "clamp-spacing"));
        assertEquals(List.of("WARNING front:g1: fan"), found(held(lay.fit("g1", "hole", "main 900 mm", ""),
                lay.fit("k1", "bodyClip", "main 1000 mm", "fan")), "clamp-spacing"));
    }

    // ---- bundle-too-big-for-opening

    /** Some wires of one thickness through a bore; those from the third on only with a condition. */
    private Bench bundle(int wires, String size, String bore, String condition) {
        return bench().part(Part.Kind.CABLE, "thin", part -> part.size("16 ga", "1 mm"))
                .part(Part.Kind.OPENING, "bored", part -> part.figure(FigureKind.BORE, bore, ""))
                .part(Part.Kind.HOUSING, "wide", part -> {
                    part.figure(FigureKind.DIAMETER, "30 mm", "");
                    for (int i = 1; i <= 40; i++) {
                        part.pins(Integer.toString(i));
                    }
                }).harness("front", wiring -> wiring.cable("thin").datum("bulkhead")
                        .add(lay.trunk("main", "wing 900 mm"), lay.branch("bNose", "wing", "nose", "300 mm", ""))
                        .add(lay.fit("g1", "bored", "main 100 mm", ""))
                        .connector("J1", "wide", "bulkhead", "", "").connector("N1", "wide", "nose", "", "")
                        .circuit("12", "", circuit -> {
                            for (int i = 1; i <= wires; i++) {
                                circuit.wire("w" + i, size, "J1:" + i, "N1:" + i, i < 3 ? "" : condition);
                            }
                        }));
    }

    /** Proven packings of equal circles: a bore a thousandth below the optimum is too small, one above it is not. */
    @Tag("outside")
    @ParameterizedTest
    @CsvFileSource(resources = "proven-packings.csv")
    void theProvenPackingDecides(int wires, double ratio) {
        String below = BigDecimal.valueOf(ratio * 0.999).setScale(6, RoundingMode.FLOOR) + " mm";
        String above = BigDecimal.valueOf(ratio * 1.001).setScale(6, RoundingMode.CEILING) + " mm";
        assertEquals(1, bundle(wires, "16 ga", below, "").check("bundle-too-big-for-opening").stream()
                .filter(each -> each.severity() == Severity.ERROR).count(), below);
        assertEquals(List.of(), found(bundle(wires, "16 ga", above, ""), "bundle-too-big-for-opening"), above);
    }

    /** Two wires of 1 mm take 2 mm; the other two are there only with the fan: 2.414 mm. */
    @Test
    void theVehiclesWhoseBundleIsTooThick() {
        Bench bench = bundle(4, "16 ga", "2.2 mm", "fan");
        assertEquals(List.of("ERROR front:g1: fan"), found(bench, "bundle-too-big-for-opening"));
        Finding finding = bench.check("bundle-too-big-for-opening").getFirst();
        assertEquals("the bundle at bulkhead - wing is at least 2.4 mm thick and does not pass opening g1 of 2.2 mm",
                finding.sentence());
        assertEquals("4 wires: 4 x 1.0 mm", finding.derivation().getFirst());
        assertTrue(finding.advice().endsWith("stay loose until then: beyond it N1 (30.0 mm); before it J1 (30.0 mm)"),
                finding.advice());
        assertEquals(List.of(), found(bundle(4, "16 ga", "2.5 mm", "fan"), "bundle-too-big-for-opening"));
    }

    /** 30 wires: sum of sections 5.48 mm, rule of thumb 6.57 mm. */
    @Test
    void onlyTheRuleOfThumbIsTooThick() {
        Bench bench = bundle(30, "16 ga", "6 mm", "");
        assertEquals(List.of("NOTE front:g1: every vehicle"), found(bench, "bundle-too-big-for-opening"));
        assertEquals("not judged until packed: whether the bundle at bulkhead - wing, about 6.6 mm thick, passes"
                + " opening g1 of 6.0 mm", bench.check("bundle-too-big-for-opening").getFirst().sentence());
        assertTrue(bench.check("bundle-too-big-for-opening").getFirst().derivation().getLast()
                .endsWith("which does not pass; that there is none smaller is not proven"));
        assertTrue(bundle(30, "16 ga", "6.5 mm", "").check("bundle-too-big-for-opening").getFirst().derivation()
                .getLast().endsWith("which passes; wires laid by hand may take more"));
        assertEquals(List.of("ERROR front:g1: every vehicle"), found(bundle(30, "16 ga", "5.4 mm", ""),
                "bundle-too-big-for-opening"));
    }

    /** 14 ga is in no row of the cable: 1.88 mm2 of copper are 1.5 mm thick, two of them 3.1 mm. */
    @Test
    void anEstimateIsNoProof() {
        assertEquals(List.of("NOTE front:g1: every vehicle"),
                found(bundle(2, "14 ga", "4 mm", ""), "bundle-too-big-for-opening"));
        assertEquals(List.of("ERROR front:g1: every vehicle"),
                found(bundle(2, "14 ga", "3 mm", ""), "bundle-too-big-for-opening"));
    }

    @Test
    void aCoveringIsHeldAgainstTheThickestStretchInIt() {
        Consumer<Bench.WiringBench> wires = wiring -> wiring.cable("thin").datum("bulkhead")
                .add(lay.trunk("main", "wing 900 mm"), lay.branch("bNose", "wing", "nose", "300 mm", ""),
                        lay.branch("bTail", "wing", "tail", "300 mm", ""))
                .connector("J1", "way12", "bulkhead", "", "").connector("N1", "way12", "nose", "", "")
                .connector("T1", "way12", "tail", "", "").circuit("12", "", circuit -> circuit
                        .wire("a", "16 ga", "J1:1", "N1:1", "").wire("b", "16 ga", "J1:2", "N1:2", "")
                        .wire("c", "16 ga", "J1:3", "T1:3", ""));
        Bench bench = bench().part(Part.Kind.CABLE, "thin", part -> part.size("16 ga", "1 mm"))
                .part(Part.Kind.COVERING, "tube", part -> part.figure(FigureKind.BORE, "2.05 mm", ""))
                .harness("front", wiring -> {
                    wires.accept(wiring);
                    wiring.add(lay.fit("t1", "tube", "main 100 mm", "main 800 mm", ""),
                            lay.fit("t2", "tube", "bNose 10 mm", "bNose 200 mm", ""));
                });
        assertEquals(List.of("front:t1"), bench.check("bundle-too-big-for-opening").stream().map(Finding::element)
                .toList());
    }

    @Test
    void anOpeningWithoutABoreIsLeftAlone() {
        assertEquals(List.of(), found(splice("main 700 mm", lay.fit("g1", "hole", "main 300 mm", "")),
                "bundle-too-big-for-opening"));
    }

    /** Nine wires that nine choices bring: 512 bundles, more than are told apart. */
    @Test
    void tooManyBundlesToTellApart() {
        String[] choices = {"c1", "c2", "c3", "c4", "c5", "c6", "c7", "c8", "c9"};
        Bench bench = new Bench().upgrade(choices).place("bulkhead", "").place("nose", "")
                .part(Part.Kind.CABLE, "thin", part -> part.size("16 ga", "1 mm"))
                .part(Part.Kind.OPENING, "bored", part -> part.figure(FigureKind.BORE, "2 mm", ""))
                .part(Part.Kind.HOUSING, "way9", "1", "2", "3", "4", "5", "6", "7", "8", "9")
                .harness("front", wiring -> wiring.cable("thin").datum("bulkhead")
                        .branch("bNose", "bulkhead", "nose", "300 mm").add(lay.fit("g1", "bored", "bNose 100 mm", ""))
                        .connector("J1", "way9", "bulkhead", "", "").connector("N1", "way9", "nose", "", "")
                        .circuit("12", "", circuit -> {
                            for (int i = 1; i <= 9; i++) {
                                circuit.wire("w" + i, "16 ga", "J1:" + i, "N1:" + i, "c" + i);
                            }
                        }));
        Finding finding = bench.check("bundle-too-big-for-opening").getFirst();
        assertEquals(Severity.NOTE, finding.severity());
        assertEquals(Optional.of(true), finding.affected().map(Finding.Affected::bounded));
    }
}
