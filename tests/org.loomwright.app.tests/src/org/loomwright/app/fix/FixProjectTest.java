// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fix;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;
import org.loomwright.app.Repository;
import org.loomwright.app.fix.FixProject.Fixed;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/** What is mended of itself, what is not, and what stays as it was. */
class FixProjectTest {

    private static final SourceReader READER = LoomReader.create();
    private static final Settings TODAY = Settings.on(LocalDate.of(2026, 1, 1));
    private static final String PLATFORM = """
            platform orrin "Orrin 1200" {
                supply 12 V negative ground
                years 1964 .. 1971
                option halogen
                place bulkhead
                place lamp
            }
            """;

    @TempDir
    private Path folder;

    private Fixed fix(RuleEngine engine, String text) throws IOException, BadCall {
        Files.writeString(folder.resolve("a.loom"), text);
        return fix(engine);
    }

    private Fixed fix(RuleEngine engine) throws BadCall {
        return new FixProject(READER, engine, 1).fix(ProjectPlace.findOne(folder, "."), TODAY, Cancel.NEVER,
                Progress.NONE);
    }

    private Fixed fix(String text) throws IOException, BadCall {
        return fix(StandardRules.engine(), text);
    }

    private static List<String> words(List<Change> changes) {
        return changes.stream().map(each -> each.line() + " " + each.rule() + ": " + each.what()).toList();
    }

    private static String mended(Fixed fixed) {
        return fixed.texts().get("a.loom").newText();
    }

    /** An engine that offers the same edits whatever it is asked about, each in a finding of its own. */
    private static RuleEngine offering(Finding.Fix... fixes) {
        return (project, settings, cancel, progress) -> {
            List<Finding> findings = new ArrayList<>();
            for (Finding.Fix fix : fixes) {
                findings.add(new Finding("test", Severity.ERROR, false, "", "", "a test", List.of(), "",
                        Optional.empty(), new Finding.Label(fix.edits().getFirst().span(), ""), List.of(), "",
                        List.of(fix), Optional.empty(), fix.title()));
            }
            return new Report(findings, new Report.Work(0, 0, 0));
        };
    }

    private static TextEdit replace(String text, String old, String now) {
        return new TextEdit(new LineIndex("a.loom", text).span(text.indexOf(old), old.length()), now);
    }

    @Test
    void everyBrokenExampleThatOffersAFixIsRidOfItsFindingAndOfNothingElse() throws IOException, BadCall {
        int mended = 0;
        for (Path example : Repository.examples("broken")) {
            String text = Files.readString(example);
            Fixed fixed = fix(text);
            if (fixed.made().isEmpty()) {
                assertEquals(Map.of(), fixed.texts());
                continue;
            }
            mended++;
            String name = example.getFileName().toString();
            assertEquals(1, fixed.made().size(), name);
            assertEquals(name.replace(".loom", ""), fixed.made().getFirst().rule());
            Map<String, Finding> left = new TreeMap<>();
            fixed.before().findings().forEach(each -> left.put(each.fingerprint(), each));
            fixed.report().findings().forEach(each -> left.remove(each.fingerprint()));
            assertEquals(List.of(fixed.made().getFirst().rule()), left.values().stream().map(Finding::rule).toList());
            assertTrue(fixed.report().findings().size() < fixed.before().findings().size());
            List<String> before = text.lines().toList();
            List<String> after = new ArrayList<>(mended(fixed).lines().toList());
            int line = fixed.made().getFirst().line() - 1;
            if (after.size() < before.size()) {
                after.add(line, before.get(line));
            }
            for (int i = 0; i < before.size(); i++) {
                assertTrue(i == line || before.get(i).equals(after.get(i)), name + ":" + (i + 1));
            }
        }
        assertTrue(mended >= 2, "examples that offer a fix: " + mended);
    }

    @Test
    void slipsOfTheTextAreMended() throws IOException, BadCall {
        Fixed fixed = fix(PLATFORM + """
                drawing front64 "Front" of orin {
                    datum bulkhaed // the grommet
                    brnch b1 from bulkhead to lamp 200 mm
                    branch b2 from bulkhead to lamp 210MM when halogn
                }
                """);
        assertEquals(List.of("8 name-unknown: \"orin\" becomes \"orrin\"",
                "9 name-unknown: \"bulkhaed\" becomes \"bulkhead\"",
                "10 line-unreadable: \"brnch\" becomes \"branch\"", "11 unit-unknown: \"MM\" becomes \"mm\"",
                "11 condition-unknown-choice: \"halogn\" becomes \"halogen\""),
                words(fixed.made()).stream().sorted(Comparator.comparingInt(
                        each -> Integer.parseInt(each.split(" ")[0]))).toList());
        assertEquals(PLATFORM + """
                drawing front64 "Front" of orrin {
                    datum bulkhead // the grommet
                    branch b1 from bulkhead to lamp 200 mm
                    branch b2 from bulkhead to lamp 210 mm when halogen
                }
                """, mended(fixed));
    }

    @Test
    void guessesAreLeftToAPerson() throws IOException, BadCall {
        Fixed fixed = fix(PLATFORM + """
                catalogue parts {
                    housing plug1 "Plug" {
                        cavities 1
                    }
                }
                drawing front64 "Front" of orrin {
                    datum bulkhead
                    branch b1 from bulkhead to lamp 200 mm
                    branch b2 from bulkhead to lamp 8 in
                    branch b3 from bulkhead to lamp 9
                    connector headLampL on b1 is plug1
                    connector J1 at bulkhead is plug1
                    circuit 12 "Dipped beam" BU {
                        wire a 14 ga from J1:1 to headLampR:1
                    }
                }
                """);
        assertEquals(List.of(), fixed.made());
        assertEquals(Map.of(), fixed.texts());
        assertTrue(words(fixed.left()).contains("17 unit-missing: insert \"mm\""), words(fixed.left()).toString());
        assertTrue(words(fixed.left()).contains("21 orphan-wire: \"headLampR\" becomes \"headLampL\""),
                words(fixed.left()).toString());
    }

    @Test
    void whatIsAcceptedIsLeftAlone() throws IOException, BadCall {
        String text = PLATFORM + """
                drawing front64 "Front" of orrin {
                    datum bulkhead
                    branch b1 from bulkhead to lamp 200 mm
                    connector J1 at bulkhead
                    circuit 12 "Dipped beam" BU {
                        splice dimmer at bulkhead
                        wire a 14 ga from J1:1 to dimer
                        wire b 14 ga from J1:2 to dimmer
                        wire c 14 ga from J1:3 to dimmer
                    }
                }
                """;
        assertEquals(List.of("14 orphan-wire: \"dimer\" becomes \"dimmer\""), words(fix(text).made()));
        assertEquals(List.of(), words(fix(text
                + "waive orphan-wire on front64:12a because \"as on the sheet\"\n").made()));
    }

    /** A waiver that names nothing is not taken out when it can only be meant for what its rule speaks of. */
    @Test
    void aWaiverOfAMisspeltElementIsMendedAndNotRemoved() throws IOException, BadCall {
        String text = PLATFORM + """
                drawing front64 "Front" of orrin {
                    datum bulkhead
                    trunk main {
                        breakout wing at 300 mm
                    }
                    connector plug at bulkhead
                    circuit 12 "Dipped beam" BU {
                        splice dimmer at bulkhead
                        wire a 14 ga from plug:1 to dimmer
                    }
                }
                """;
        String waiver = "waive splice-with-too-few-wires on front64:%s because \"joined on the sheet\"\n";
        assertEquals(List.of("19 waiver-unused: \"front64:dimer\" becomes \"front64:dimmer\""),
                words(fix(text + waiver.formatted("dimer")).made()));
        assertEquals(List.of(), words(fix(text + waiver.formatted("dimmer")).made()));
        assertEquals(List.of("19 waiver-unused: remove the line"), words(fix(text + waiver.formatted("horn")).made()));
    }

    @Test
    void aWaiverWithoutAReasonAcceptsNothingAndStays() throws IOException, BadCall {
        String text = PLATFORM + "drawing front64 \"Front\" of orrin {\n    datum bulkhead\n"
                + "    connector plug at bulkhead\n"
                + "    circuit 12 \"Dipped beam\" BU {\n        splice dimmer at bulkhead\n"
                + "        wire a 14 ga from plug:1 to dimmer\n    }\n}\n"
                + "waive splice-with-too-few-wires on front64:dimmer because \"\"\n";
        Fixed fixed = fix(text);
        assertEquals(List.of(), words(fixed.made()));
        assertEquals(List.of("waiver-unused: the waiver of splice-with-too-few-wires on front64:dimmer accepts"
                + " nothing: it gives no reason"), fixed.report().findings().stream()
                .filter(each -> each.rule().equals("waiver-unused"))
                .map(each -> each.rule() + ": " + each.sentence()).toList());
    }

    @Test
    void theWaiverStaysWhileTheTextHasProblemsOrAComment() throws IOException, BadCall {
        String waiver = "waive vehicle-without-drawing on orrin:dash because \"no sheet\"";
        String drawing = "drawing front64 \"Front\" of orrin\n";
        assertEquals(List.of("9 waiver-unused: remove the line"),
                words(fix(PLATFORM + drawing + waiver + "\n").made()));
        assertEquals(List.of(), fix(PLATFORM + drawing + waiver + " // see below\n").made());
        assertEquals(List.of(), fix(PLATFORM + drawing + waiver + "\nkit box contains\n").made());
    }

    @Test
    void byteOrderMarkLineEndsAndLastLineStay() throws IOException, BadCall {
        String text = ("\uFEFF" + PLATFORM + "drawing front64 \"Front: Über\" of orin // ±").replace("\n", "\r\n");
        Fixed fixed = fix(text);
        fixed.write();
        assertArrayEquals(text.replace("orin //", "orrin //").getBytes(StandardCharsets.UTF_8),
                Files.readAllBytes(folder.resolve("a.loom")));
    }

    @Test
    void newLinesEndAsTheOthersDo() throws IOException, BadCall {
        String text = "platform orrin {\r\n    place bulkhead\r\n\r\nkit box\r\n";
        String mended = mended(fix(text));
        assertFalse(mended.replace("\r\n", "").contains("\n"), mended);
        assertTrue(mended.contains("}\r\n"), mended);
    }

    @Test
    void ofFixesThatOverlapTheFirstIsMade() throws IOException, BadCall {
        String text = "// one two three\nplatform orrin\n";
        Finding.Fix first = new Finding.Fix("a", List.of(replace(text, "one two", "1 2")));
        Finding.Fix second = new Finding.Fix("b", List.of(replace(text, "two three", "2 3")));
        RuleEngine once = (project, settings, cancel, progress) -> project.text("a.loom").orElse("").contains("one")
                ? offering(first, second).check(project, settings, cancel, progress)
                : new Report(List.of(), new Report.Work(0, 0, 0));
        assertEquals("// 1 2 three\nplatform orrin\n", mended(fix(once, text)));
    }

    @Test
    void aFixThatSpoilsTheTextIsRefusedAndTheOthersAreMade() throws IOException, BadCall {
        String text = "// one\nplatform orrin\n";
        Finding.Fix good = new Finding.Fix("good", List.of(replace(text, "one", "two")));
        Finding.Fix bad = new Finding.Fix("bad", List.of(replace(text, "platform", "plinth {")));
        RuleEngine engine = (project, settings, cancel, progress) -> project.text("a.loom").orElse("").contains("one")
                ? offering(bad, good).check(project, settings, cancel, progress)
                : offering(bad).check(project, settings, cancel, progress);
        Fixed fixed = fix(engine, text);
        assertEquals("// two\nplatform orrin\n", mended(fixed));
        assertEquals(1, fixed.made().size());
        assertEquals(1, fixed.left().size());
    }

    @Test
    void aFindingWithAChoiceIsLeftUnlessOneIsCertain() throws IOException, BadCall {
        String text = "// one\nplatform orrin\n";
        Finding.Fix two = new Finding.Fix("two", List.of(replace(text, "one", "two")));
        Finding.Fix three = new Finding.Fix("three", List.of(replace(text, "one", "three")));
        Finding.Fix perhaps = new Finding.Fix("three", three.edits(), false);
        assertEquals(Optional.empty(), Round.certain(finding(two, three)));
        assertEquals(Optional.of(two), Round.certain(finding(two, perhaps)));
        assertEquals(Optional.empty(), Round.certain(finding(perhaps)));
        assertEquals(Optional.empty(), Round.certain(finding()));
    }

    private static Finding finding(Finding.Fix... fixes) {
        return new Finding("test", Severity.ERROR, false, "", "", "a test", List.of(), "", Optional.empty(),
                new Finding.Label(Span.NONE, ""), List.of(), "", List.of(fixes),
                Optional.empty(), "");
    }

    @Test
    void fixesThatLeadToFixesComeToAnEnd() throws IOException, BadCall {
        String text = "// one\nplatform orrin\n";
        Fixed fixed = fix(offering(new Finding.Fix("more", List.of(replace(text, "// ", "// more ")))), text);
        assertEquals(10, fixed.made().size());
    }

    @Test
    void aFileThatIsNoTextIsNeverWritten() throws IOException, BadCall {
        byte[] latin = "// Bl\u00e4tt\nplatform orrin\n".getBytes(StandardCharsets.ISO_8859_1);
        Files.write(folder.resolve("latin.loom"), latin);
        Fixed fixed = fix(PLATFORM + "drawing front64 \"Front\" of orin\n");
        fixed.write();
        assertEquals(List.of("a.loom"), List.copyOf(fixed.texts().keySet()));
        assertArrayEquals(latin, Files.readAllBytes(folder.resolve("latin.loom")));
    }

    @Test
    void aFileThatChangedMeanwhileIsNotWrittenAndNeitherAreTheOthers() throws IOException, BadCall {
        Files.writeString(folder.resolve("b.loom"), "kit box of orin\n");
        Fixed fixed = fix(PLATFORM + "drawing front64 \"Front\" of orin\n");
        assertEquals(2, fixed.texts().size());
        Files.writeString(folder.resolve("b.loom"), "kit box of orin // mine\n");
        String before = Files.readString(folder.resolve("a.loom"));
        BadCall refused = assertThrows(BadCall.class, fixed::write);
        assertTrue(refused.getMessage().contains("changed on disk in the meantime"), refused.getMessage());
        assertEquals(before, Files.readString(folder.resolve("a.loom")));
        assertEquals("kit box of orin // mine\n", Files.readString(folder.resolve("b.loom")));
    }

    @Test
    void nothingIsWrittenBeforeItIsAskedFor() throws IOException, BadCall {
        String text = PLATFORM + "drawing front64 \"Front\" of orin\n";
        fix(text);
        assertEquals(text, Files.readString(folder.resolve("a.loom")));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(1, files.count());
        }
    }
}
