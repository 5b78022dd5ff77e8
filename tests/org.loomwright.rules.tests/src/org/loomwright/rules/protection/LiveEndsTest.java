// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.Part.WordKind;
import org.loomwright.rules.Bench;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Laying;

/** What a source still feeds: branches no vehicle uses, headlamps when a fuse opens, wires behind a link. */
class LiveEndsTest {

    private final Laying lay = new Laying();

    private static Bench bench() {
        return new Bench().upgrade("fogs", "relays").ground("body", false).place("box", "").place("nose", "")
                .place("left", "").place("right", "")
                .part(Part.Kind.SOURCE, "battery12", part -> part.pins("pos", "neg").word(WordKind.TYPE, "battery")
                        .word(WordKind.POLARITY, "pos"))
                .part(Part.Kind.FUSE, "f", part -> part.pins("1", "2").figure(FigureKind.RATING, "10 A", "")
                        .word(WordKind.BASIS, "continuous"))
                .part(Part.Kind.FUSIBLE_LINK, "link", "1", "2")
                .part(Part.Kind.SWITCH, "pull", "1", "2")
                .part(Part.Kind.HOUSING, "way2", "1", "2")
                .part(Part.Kind.LAMP, "fogLamp", "1")
                .part(Part.Kind.LAMP, "sealed", part -> part.pin("1", "dip").pin("2", "main beam").pin("3", "ground")
                        .word(WordKind.TYPE, "headlamp").joins(false, "1", "3", "4 ohm", "")
                        .joins(false, "2", "3", "3 ohm", ""))
                .part(Part.Kind.LAMP, "plain", part -> part.pin("1", "dip").pin("2", "main beam").pin("3", "ground"))
                .device("battery", "battery12", "box", "body", "");
    }

    private static List<String> found(Bench bench, String rule) {
        return bench.check(rule).stream().map(finding -> finding.severity() + " " + finding.element() + ": "
                + finding.affected().map(Finding.Affected::words).orElse("")).toList();
    }

    // ---- capped-branch-is-live

    private Bench fogs(String feed, String condition, Consumer<Bench.WiringBench> more) {
        return bench().harness("front", wiring -> {
            wiring.datum("box").branch("bFog", "box", "nose", "900 mm").add(lay.cap("bFog", "", "not fogs"))
                    .device("F5", "f", "box", "", "").device("SW", "pull", "box", "", "")
                    .connector("P1", "way2", "nose", "", "").stud("G1", "box", "body", "")
                    .circuit("1", "", circuit -> circuit.wire("a", "14 ga", "battery:pos", "F5:1", "")
                            .wire("b", "14 ga", "battery:pos", "SW:1", ""))
                    .circuit("35", "", circuit -> circuit.wire("a", "16 ga", feed, "P1:1", condition)
                            .wire("b", "16 ga", "P1:2", "G1", ""));
            more.accept(wiring);
        });
    }

    @Test
    void liveBehindAFuse() {
        Bench bench = fogs("F5:2", "", wiring -> { });
        assertEquals(List.of("WARNING front:35a: not fogs"), found(bench, "capped-branch-is-live"));
        Finding finding = bench.check("capped-branch-is-live").getFirst();
        assertEquals("wire 35a in branch bFog, which is capped, can be live, though fused", finding.sentence());
        assertEquals(List.of("fed by way of battery:pos - F5:1 - F5:2"), finding.derivation());
    }

    @Test
    void liveBehindASwitchAlone() {
        Bench bench = fogs("SW:2", "", wiring -> { });
        assertEquals(List.of("ERROR front:35a: not fogs"), found(bench, "capped-branch-is-live"));
    }

    @Test
    void aWireThatIsLeftOutIsDead() {
        assertEquals(List.of(), found(fogs("F5:2", "fogs", wiring -> { }), "capped-branch-is-live"));
        assertEquals(List.of("WARNING front:35a: not fogs and relays"),
                found(fogs("F5:2", "relays", wiring -> { }), "capped-branch-is-live"));
    }

    @Test
    void aWireThatDoesNotRunInTheBranch() {
        Bench bench = bench().harness("front", wiring -> wiring.datum("box").branch("bFog", "box", "nose", "900 mm")
                .branch("bLeft", "box", "left", "900 mm").add(lay.cap("bFog", "", "not fogs"))
                .device("F5", "f", "box", "", "").connector("H1", "way2", "left", "", "")
                .circuit("1", "", circuit -> circuit.wire("a", "14 ga", "battery:pos", "F5:1", ""))
                .circuit("12", "", circuit -> circuit.wire("a", "16 ga", "F5:2", "H1:1", "")));
        assertEquals(List.of(), found(bench, "capped-branch-is-live"));
    }

    // ---- one-device-darkens-both-headlamps

    private static Bench lamps(String part) {
        return bench().device("lampL", part, "left", "body", "").device("lampR", part, "right", "body", "");
    }

    private static Bench.WiringBench shared(Bench.WiringBench wiring) {
        return wiring.datum("box").branch("bL", "box", "left", "600 mm").branch("bR", "box", "right", "900 mm")
                .device("F1", "f", "box", "", "").device("F2", "f", "box", "", "").device("F3", "f", "box", "", "")
                .circuit("1", "", circuit -> circuit.wire("a", "10 ga", "battery:pos", "F1:1", "")
                        .wire("b", "10 ga", "battery:pos", "F2:1", "").wire("c", "10 ga", "battery:pos", "F3:1", ""));
    }

    /** Dip of the right lamp hangs on the left lamp's fuse without relays; main beam hangs on one fuse. */
    @Test
    void oneFuseForBothLamps() {
        Bench bench = lamps("sealed").harness("front", wiring -> shared(wiring)
                .circuit("12", "", circuit -> circuit.wire("a", "14 ga", "F1:2", "lampL:1", "")
                        .wire("b", "14 ga", "F1:2", "lampR:1", "not relays")
                        .wire("c", "14 ga", "F2:2", "lampR:1", "relays"))
                .circuit("13", "", circuit -> circuit.wire("a", "14 ga", "F3:2", "lampL:2", "")
                        .wire("b", "14 ga", "F3:2", "lampR:2", "")));
        List<Finding> findings = bench.check("one-device-darkens-both-headlamps");
        assertEquals(List.of("ERROR front:F1: not relays", "ERROR front:F3: every vehicle"), findings.stream()
                .map(each -> each.severity() + " " + each.element() + ": " + each.affected().orElseThrow().words())
                .toList());
        assertEquals("fuse F1 alone feeds dip of lampL and lampR: when it opens, none of them is lit",
                findings.getFirst().sentence());
        assertEquals("fuse F3 alone feeds main beam of lampL and lampR: when it opens, none of them is lit",
                findings.getLast().sentence());
    }

    @Test
    void aFuseForEachLampLeavesANoteForTheCommonOne() {
        Bench bench = lamps("sealed").harness("front", wiring -> wiring.datum("box")
                .branch("bL", "box", "left", "600 mm").branch("bR", "box", "right", "900 mm")
                .device("L1", "link", "box", "", "").device("F1", "f", "box", "", "").device("F2", "f", "box", "", "")
                .circuit("1", "", circuit -> circuit.wire("a", "10 ga", "battery:pos", "L1:1", "")
                        .wire("b", "10 ga", "L1:2", "F1:1", "").wire("c", "10 ga", "L1:2", "F2:1", ""))
                .circuit("12", "", circuit -> circuit.wire("a", "14 ga", "F1:2", "lampL:1", "")
                        .wire("b", "14 ga", "F2:2", "lampR:1", "")));
        assertEquals(List.of("NOTE front:L1: every vehicle"), found(bench, "one-device-darkens-both-headlamps"));
    }

    /** Two ways to the lamps: neither fuse darkens anything. */
    @Test
    void whatAnotherWayStillFeeds() {
        Bench bench = lamps("sealed").harness("front", wiring -> shared(wiring)
                .circuit("12", "", circuit -> circuit.wire("a", "14 ga", "F1:2", "lampL:1", "")
                        .wire("b", "14 ga", "F1:2", "lampR:1", "").wire("c", "14 ga", "F2:2", "lampR:1", "")));
        assertEquals(List.of(), found(bench, "one-device-darkens-both-headlamps"));
    }

    @Test
    void aLampThatIsNotCalledAHeadlampIsNone() {
        Consumer<Bench.WiringBench> one = wiring -> shared(wiring).circuit("12", "", circuit -> circuit
                .wire("a", "14 ga", "F1:2", "lampL:1", "").wire("b", "14 ga", "F1:2", "lampR:1", ""));
        assertEquals(List.of(), found(lamps("plain").harness("front", one), "one-device-darkens-both-headlamps"));
        assertEquals(1, lamps("sealed").harness("front", one).check("one-device-darkens-both-headlamps").size());
        Bench single = bench().device("lampL", "sealed", "left", "body", "")
                .harness("front", wiring -> shared(wiring).circuit("12", "", circuit -> circuit
                        .wire("a", "14 ga", "F1:2", "lampL:1", "")));
        assertEquals(List.of(), found(single, "one-device-darkens-both-headlamps"));
    }

    /** What the factory's fuses do is not asked: only devices of ours. */
    @Test
    void theFactorysFusesAreNotAsked() {
        Bench bench = lamps("sealed").drawing("front64", "front", "", wiring -> shared(wiring)
                .circuit("12", "", circuit -> circuit.wire("a", "14 ga", "F1:2", "lampL:1", "")
                        .wire("b", "14 ga", "F1:2", "lampR:1", "")));
        assertEquals(List.of(), found(bench, "one-device-darkens-both-headlamps"));
    }

    // ---- what a fusible link protects

    private static List<Finding> behindLink(String link, String wire) {
        return bench().part(Part.Kind.FUSIBLE_LINK, "fl").harness("front", wiring -> wiring.datum("box")
                .branch("b", "box", "nose", "600 mm").connector("C1", "way2", "nose", "", "")
                .circuit("1", "", circuit -> circuit.splice("S1", "box", "")
                        .wire("a", "", each -> each.size(link, "").cable("fl").from("battery:pos", "").to("S1", "")
                                .length("100 mm")))
                .circuit("2", "", circuit -> circuit.wire("a", wire, "S1", "C1:1", "")))
                .check("link-does-not-protect");
    }

    @Tag("outside")
    @ParameterizedTest
    @CsvFileSource(resources = "fusible-link-steps.csv")
    void whatALinkProtects(String link, String smallest, String tooSmall) {
        assertEquals(List.of(), behindLink(link, smallest));
        List<Finding> findings = behindLink(link, tooSmall);
        assertEquals(1, findings.size());
        assertTrue(findings.getFirst().sentence().contains("too small for it"), findings.getFirst().sentence());
    }
}
