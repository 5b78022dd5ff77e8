// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.Part.WordKind;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Cancelled;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding.Acceptance.How;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.standard.StandardRules;

class BookRuleEngineTest {

    private static final RuleInfo INFO = new RuleInfo("sample", "Is it so?", Severity.WARNING, Kind.TRANSCRIPTION,
            Scope.HARNESS, "none");

    /** A rule that does what a test says. */
    private record Sample(java.util.function.BiConsumer<Target.OfHarness, Findings> work)
            implements Rule<Target.OfHarness> {
        @Override
        public RuleInfo info() {
            return INFO;
        }

        @Override
        public Class<Target.OfHarness> target() {
            return Target.OfHarness.class;
        }

        @Override
        public void check(Target.OfHarness target, Findings findings) {
            work.accept(target, findings);
        }
    }

    private static Report run(Bench bench, java.util.function.BiConsumer<Target.OfHarness, Findings> work) {
        return new BookRuleEngine(new RuleBook(List.of(new Sample(work)))).check(bench.project(), Settings.TIMELESS,
                Cancel.NEVER, Progress.NONE);
    }

    private static Bench orphans() {
        return new Bench().upgrade("fan", "halogen").place("box", "")
                .part(Part.Kind.HOUSING, "way4", "1", "2", "3", "4")
                .harness("front", wiring -> wiring.connector("J1", "way4", "box", "", "")
                        .circuit("12", "", circuit -> circuit.wire("a", "", wire -> wire.from("J1:1", "")
                                .to("J1:2", "fan"))));
    }

    @Test
    void equalFindingsAreJoinedByTheirVehicles() {
        Report report = run(new Bench().upgrade("fan").harness("front", wiring -> { }), (target, findings) -> {
            var vehicles = target.wiring().platform().vehicles();
            var fan = vehicles.resolve(Bench.when("fan and year <= 1966")).condition();
            var other = vehicles.resolve(Bench.when("fan and year >= 1967")).condition();
            for (var when : List.of(fan, other)) {
                findings.about("front", "12", "circuit 12").when(when).says("it is so")
                        .see(new org.loomwright.harness.Span("a", 1, 1, 1, 1), "here").report();
            }
            findings.about("front", "12", "circuit 12").when(vehicles.none()).says("it is never so").report();
        });
        assertEquals(1, report.findings().size());
        assertEquals("fan", report.findings().getFirst().affected().orElseThrow().words());
        assertEquals("8 of 16 vehicles", report.findings().getFirst().affected().orElseThrow().tally());
        assertEquals(1, report.findings().getFirst().related().size());
        assertEquals("circuit 12 of front", report.findings().getFirst().subject());
    }

    @Test
    void aBoundedSearchIsSaidToBeOne() {
        Report report = run(new Bench().harness("front", wiring -> { }), (target, findings) -> findings
                .about("front", "", "harness front").when(target.wiring().when()).says("it is so").bounded().report());
        assertTrue(report.findings().getFirst().affected().orElseThrow().bounded());
    }

    @Test
    void conditionsThatCannotBeFollowedLeaveAFindingAndTheOtherRulesRun() {
        RuleBook book = new RuleBook(List.of(new Sample((target, findings) -> {
            throw new TooManyCombinations("too many");
        }), StandardRules.book().rules().get(1)));
        Report report = new BookRuleEngine(book).check(orphans().project(), Settings.TIMELESS, Cancel.NEVER,
                Progress.NONE);
        assertEquals(List.of("orphan-wire", "too-many-combinations"),
                report.findings().stream().map(Finding::rule).sorted().toList());
        assertTrue(report.of("too-many-combinations").getFirst().sentence().startsWith("rule sample"));
        assertTrue(report.objects(Severity.ERROR));
    }

    @Test
    void problemsOfTheTextAreFindings() {
        Report report = orphans().problem("syntax", "a circuit number is expected").check();
        Finding finding = report.of("syntax").getFirst();
        assertEquals(Severity.ERROR, finding.severity());
        assertTrue(finding.affected().isEmpty());
        assertTrue(finding.counts());
    }

    @Test
    void aWaiverAcceptsItsVehiclesOnly() {
        Report report = orphans().waive("orphan-wire", "front", "12a", "", "halogen").check();
        List<Finding> findings = report.of("orphan-wire");
        assertEquals(List.of("not fan and halogen", "not fan and not halogen"),
                findings.stream().map(each -> each.affected().orElseThrow().words()).sorted().toList());
        Finding accepted = findings.stream().filter(each -> each.acceptance().isPresent()).findFirst().orElseThrow();
        assertEquals("not fan and halogen", accepted.affected().orElseThrow().words());
        assertEquals(How.WAIVED, accepted.acceptance().orElseThrow().how());
        assertEquals("accepted", accepted.acceptance().orElseThrow().reason());
        assertEquals(1, report.counting().size());
    }

    /** Two findings of one kind on one element; the second of them is known by a number. */
    private static Bench twice() {
        return new Bench().upgrade("fan").harness("front", wiring -> { });
    }

    private static java.util.Map<String, List<String>> printsOf(Bench bench) {
        return run(bench, (target, findings) -> {
            var all = target.wiring().platform().vehicles().all();
            for (int line = 1; line <= 2; line++) {
                findings.about("front", "12", "circuit 12").when(all).says("it is so on line " + line)
                        .at(new org.loomwright.harness.Span("a", line, 1, line, 1), "").report();
            }
        }).of("sample").stream().collect(java.util.stream.Collectors.groupingBy(
                each -> each.sentence() + (each.counts() ? "" : ", accepted"),
                java.util.stream.Collectors.mapping(Finding::fingerprint, java.util.stream.Collectors.toList())));
    }

    @Test
    void acceptingAFindingForSomeVehiclesLeavesTheFingerprintsOfTheRest() {
        var open = printsOf(twice());
        var parted = printsOf(twice().waive("sample", "front", "12", "", "fan"));
        assertEquals(4, parted.size());
        open.forEach((sentence, prints) -> assertEquals(prints, parted.get(sentence), sentence));
        assertEquals(4, parted.values().stream().flatMap(List::stream).distinct().count());
        var all = printsOf(twice().waive("sample", "front", "12", "", ""));
        open.forEach((sentence, prints) -> assertEquals(prints, all.get(sentence + ", accepted"), sentence));
    }

    @Test
    void aWaiverWithAMistakeInItsConditionAcceptsNothing() {
        Report report = orphans().waive("orphan-wire", "front", "12a", "", "halogenn").check();
        assertEquals(1, report.of("orphan-wire").stream().filter(Finding::counts).count());
        assertEquals(1, report.of("waiver-unused").size());
    }

    @Test
    void aWaiverOfTheWholeDoesNotAcceptItsElements() {
        Report report = orphans().waive("orphan-wire", "front", "", "", "").check();
        assertEquals(List.of("orphan-wire", "waiver-unused"),
                report.counting().stream().map(Finding::rule).sorted().toList());
    }

    @Test
    void waiversEndWithTheirLastDay() {
        Bench bench = orphans().waive("orphan-wire", "front", "12a", "2027-06-30", "");
        assertFalse(bench.check(Settings.TIMELESS).objects(Severity.NOTE));
        assertFalse(bench.check(Settings.on(LocalDate.of(2027, 6, 30))).objects(Severity.NOTE));
        Report late = bench.check(Settings.on(LocalDate.of(2027, 7, 1)));
        assertEquals(List.of("orphan-wire", "waiver-expired"),
                late.counting().stream().map(Finding::rule).sorted().toList());
        assertEquals(bench.at("waiver of orphan-wire"), late.of("waiver-expired").getFirst().place().span());
    }

    @Test
    void aWaiverOfARuleThatDoesNotExistSaysSo() {
        Finding finding = orphans().waive("orfan-wire", "front", "12a", "", "").check().of("waiver-unused").getFirst();
        assertTrue(finding.sentence().endsWith("there is no such rule"), finding.sentence());
    }

    private static Bench overfused(String reason, String when) {
        return new Bench().upgrade("fan").ground("body", false).zone("bay", "80 C").place("box", "bay")
                .part(Part.Kind.CABLE, "xlpe", part -> part.figure(FigureKind.TEMPERATURE, "125 C", ""))
                .part(Part.Kind.LAMP, "lamp45", "1").device("lampL", "lamp45", "box", "body", "")
                .part(Part.Kind.FUSE, "f", part -> part.pins("1", "2").figure(FigureKind.RATING, "40 A", "")
                        .word(WordKind.BASIS, "continuous"))
                .harness("front", wiring -> wiring.cable("xlpe").device("F1", "f", "box", "", "")
                        .circuit("12", "", circuit -> {
                            circuit.wire("a", "18 ga", "F1:2", "lampL:1", "");
                            if (!reason.isEmpty()) {
                                circuit.asFactory(reason, when);
                            }
                        }));
    }

    @Test
    void whatIsKeptAsTheFactoryDidItIsAccepted() {
        assertEquals(1, overfused("", "").check().of("fuse-exceeds-wire").stream().filter(Finding::counts).count());
        List<Finding> findings = overfused("the factory ran it so", "fan").check().of("fuse-exceeds-wire");
        Finding kept = findings.stream().filter(each -> each.acceptance().isPresent()).findFirst().orElseThrow();
        assertEquals(How.AS_FACTORY, kept.acceptance().orElseThrow().how());
        assertEquals("fan", kept.affected().orElseThrow().words());
        assertEquals(List.of("not fan"), findings.stream().filter(Finding::counts)
                .map(each -> each.affected().orElseThrow().words()).toList());
    }

    @Test
    void asFactoryDoesNotAcceptSlipsOfThePen() {
        Report report = new Bench().upgrade("fan").place("box", "").part(Part.Kind.HOUSING, "way4", "1", "2")
                .harness("front", wiring -> wiring.connector("J1", "way4", "box", "", "")
                        .circuit("12", "", circuit -> circuit.wire("a", "", wire -> wire.from("J1:1", "")
                                .asFactory("so it was", "")))).check();
        assertEquals(1, report.counting().size());
    }

    @Test
    void fingerprintsStayWhenLinesMove() {
        List<String> here = prints(new Bench());
        List<String> there = prints(new Bench().down(40));
        assertEquals(here, there);
        assertEquals(here.size(), here.stream().distinct().count());
        assertTrue(here.stream().allMatch(print -> print.matches("[0-9a-f]{32}")), here::toString);
    }

    private static List<String> prints(Bench bench) {
        return bench.place("box", "").harness("front", wiring -> wiring
                .circuit("12", "", circuit -> circuit.wire("a", "", "", "", "").wire("b", "", "", "X:1", ""))
                .circuit("12", "", circuit -> circuit.wire("a", "", "", "", ""))).check().findings().stream()
                .map(Finding::fingerprint).toList();
    }

    @Test
    void equalProjectsGiveEqualReportsWhateverThreadAndLocale() throws Exception {
        String expected = text(orphans().check());
        Locale before = Locale.getDefault();
        try (var threads = Executors.newFixedThreadPool(4)) {
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            List<Callable<String>> tasks = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                tasks.add(() -> text(orphans().check()));
            }
            Project shared = orphans().project();
            for (int i = 0; i < 8; i++) {
                tasks.add(() -> text(StandardRules.engine().check(shared, Settings.TIMELESS, Cancel.NEVER,
                        Progress.NONE)));
            }
            for (var result : threads.invokeAll(tasks)) {
                assertEquals(expected, result.get());
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    private static String text(Report report) {
        StringBuilder text = new StringBuilder();
        for (Finding finding : report.findings()) {
            text.append(finding.place()).append(finding.rule()).append(finding.sentence()).append(finding.derivation())
                    .append(finding.related()).append(finding.fingerprint())
                    .append(finding.affected().map(each -> each.words() + each.tally())).append('\n');
        }
        return text.toString();
    }

    @Test
    void findingsAreInOrderOfPlace() {
        Report report = new Bench().place("box", "").part(Part.Kind.HOUSING, "way4", "1").harness("front", wiring -> {
            wiring.connector("J1", "way4", "box", "", "");
            for (int i = 12; i > 0; i--) {
                String name = Integer.toString(i);
                wiring.circuit(name, "", circuit -> circuit.wire("a", "", "J1:1", "", ""));
            }
        }).check();
        List<org.loomwright.harness.Span> places = report.findings().stream().map(each -> each.place().span()).toList();
        assertEquals(places.stream().sorted().toList(), places);
        assertTrue(places.size() > 12);
    }

    @Test
    void aCheckCanBeCancelled() {
        int[] asked = {0};
        assertThrows(Cancelled.class, () -> StandardRules.engine().check(orphans().project(), Settings.TIMELESS,
                () -> ++asked[0] > 5, Progress.NONE));
    }

    @Test
    void progressEndsAtTheTotal() {
        List<String> steps = new ArrayList<>();
        StandardRules.engine().check(orphans().project(), Settings.TIMELESS, Cancel.NEVER,
                (what, done, total) -> steps.add(done + "/" + total));
        String total = steps.getLast().substring(steps.getLast().indexOf('/') + 1);
        assertEquals(total + "/" + total, steps.getLast());
        assertEquals("0/" + total, steps.getFirst());
    }

    @Test
    void whatGeometryFindsIsReported() {
        Report report = new Bench().place("box", "").place("nose", "").part(Part.Kind.HOUSING, "way4", "1")
                .harness("front", wiring -> wiring.datum("box").branch("b", "nowhere", "nose", "1 m")).check();
        assertTrue(report.objects(Severity.ERROR), report.findings().toString());
    }

    @Test
    void anEmptyProjectHasNothingToObjectTo() {
        Report report = StandardRules.engine().check(Project.link(List.of()), Settings.TIMELESS, Cancel.NEVER,
                Progress.NONE);
        assertEquals(List.of(), report.findings());
        assertTrue(report.worst().isEmpty());
    }
}
