// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.print.CheckText;
import org.loomwright.app.print.Palette;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Problem;
import org.loomwright.harness.TextEdit;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/** What the practice of a project does to its findings, and what is said of a practice that is wrong. */
class PracticeTest {

    private static final String RULE = "clamp-spacing";

    private static String example(String name) throws IOException {
        return Files.readString(Repository.root().resolve("docs/examples/broken/" + name + ".loom"));
    }

    private static Report check(Opened opened) {
        return StandardRules.engine().check(opened.project(), Settings.TIMELESS, Cancel.NEVER, Progress.NONE);
    }

    private static Report check(String text) throws BadCall {
        return check(TextProject.open(text));
    }

    private static String practice(String... lines) {
        return "practice shop {\n    " + String.join("\n    ", lines) + "\n}\n";
    }

    /** What is said of a practice itself: code, message and advice, with the text as its fix leaves it. */
    private static List<String> slips(String text) throws BadCall {
        return check("platform orrin\n" + text).findings().stream()
                .map(each -> each.rule() + ": " + each.sentence() + (each.advice().isEmpty() ? "" : "; ")
                        + each.advice()).toList();
    }

    @Test
    void aRuleIsTreatedAsNote() throws IOException, BadCall {
        Report usual = check(example(RULE));
        assertEquals(Severity.WARNING, usual.of(RULE).getFirst().severity());
        Report report = check(example(RULE) + practice("treat clamp-spacing as note because \"not our clips\""));
        Finding finding = report.of(RULE).getFirst();
        assertEquals(Severity.NOTE, finding.severity());
        assertEquals(usual.of(RULE).getFirst().fingerprint(), finding.fingerprint());
        assertTrue(finding.related().getLast().text().contains("treated as note here, not as warning"));
        assertTrue(usual.objects(Severity.WARNING));
        assertFalse(report.objects(Severity.WARNING));
    }

    @Test
    void aRuleIsTreatedAsError() throws IOException, BadCall {
        Report report = check(example(RULE) + practice("treat clamp-spacing as error because \"a recall\""));
        assertEquals(Severity.ERROR, report.of(RULE).getFirst().severity());
    }

    @Test
    void aSilentRuleIsSetAsideWithItsReason() throws IOException, BadCall {
        Opened opened = TextProject.open(example(RULE)
                + practice("treat clamp-spacing as silent because \"not our clips\""));
        Report report = check(opened);
        Finding finding = report.of(RULE).getFirst();
        assertFalse(finding.counts());
        assertEquals("not our clips", finding.acceptance().orElseThrow().reason());
        assertEquals("set aside", finding.acceptance().orElseThrow().how().words());
        String summary = new CheckText(new Palette(false)).summary(opened, report);
        assertTrue(summary.contains("1 set aside by the practice (--accepted)"), summary);
        assertTrue(summary.endsWith("\njudged by the practice shop: 1 rule treated otherwise\n"), summary);
    }

    @Test
    void anErrorCannotBeSilenced() throws IOException, BadCall {
        String name = "no-protection";
        Report report = check(example(name) + practice("treat no-protection as silent because \"no\""));
        assertTrue(report.of(name).stream().allMatch(Finding::counts));
        assertTrue(report.of(name).stream().anyMatch(each -> each.severity() == Severity.ERROR));
        assertEquals(1, report.of("error-silenced").size());
    }

    @Test
    void aLimitOfTheShopDecidesAndIsNamed() throws IOException, BadCall {
        String wide = practice("limit clampSpacing 2000 mm source \"a stiff conduit\"");
        assertEquals(List.of(), check(example(RULE) + wide).of(RULE));
        Report report = check(example(RULE + "-mended") + practice("limit clampSpacing 50 mm source \"a rally car\""));
        Finding finding = report.of(RULE).getFirst();
        assertTrue(finding.derivation().getFirst().endsWith("(practice shop: a rally car)"),
                finding.derivation().toString());
        assertTrue(finding.related().stream().anyMatch(each -> each.text().equals("the practice's limit")));
    }

    @Test
    void theLimitsOfFitReachTheJudge() throws BadCall {
        String tight = TextProject.SMALL + practice("limit excessAtMost 1 mm source \"a test\"");
        assertFalse(check(TextProject.SMALL).findings().stream().anyMatch(each -> each.rule().startsWith("excess-")));
        assertTrue(check(tight).findings().stream().anyMatch(each -> each.rule().startsWith("excess-")
                && each.sentence().contains(" 1 mm ")), check(tight).findings().toString());
    }

    @Test
    void whatIsSaidForThePlatformGoesFirst() throws IOException, BadCall {
        String all = practice("treat clamp-spacing as error because \"all\"");
        String own = "practice own of orrin {\n    treat clamp-spacing as note because \"this one\"\n}\n";
        assertEquals(Severity.NOTE, check(example(RULE) + all + own).of(RULE).getFirst().severity());
        String other = "platform other\n" + own.replace("of orrin", "of other");
        assertEquals(Severity.ERROR, check(example(RULE) + all + other).of(RULE).getFirst().severity());
    }

    @Test
    void namesAreCorrected() throws BadCall {
        assertEquals(List.of("rule-unknown: there is no rule named \"clamp-spacin\"; did you mean \"clamp-spacing\"?"),
                slips(practice("treat clamp-spacin as note because \"x\"")));
        assertEquals(List.of("limit-unknown: there is no limit named \"clampspacing\"; did you mean \"clampSpacing\"?"),
                slips(practice("limit clampspacing 18 in source \"x\"")));
        assertEquals(List.of("name-unknown: there is no platform named \"orin\"; did you mean \"orrin\"?"),
                slips(practice().replace("shop", "shop of orin")));
        String text = "platform orrin\n" + practice("limit clampspacing 18 in source \"x\"");
        Problem problem = TextProject.open(text).project().problems().getFirst();
        assertTrue(TextEdit.apply(text, problem.edits()).contains("limit clampSpacing 18 in"));
    }

    @Test
    void figuresHaveUnitsBoundsAndASource() throws BadCall {
        assertEquals(List.of("unit-wrong: \"V\" is a unit of voltage; needed here is a length such as 12 mm"),
                slips(practice("limit clampSpacing 18 V source \"x\"")));
        assertEquals(List.of("unit-wrong: \"mm\" is a unit of length; needed here is a share such as 10 %"),
                slips(practice("limit gaugeMargin 18 mm source \"x\"")));
        assertEquals(List.of("number-absurd: clampSpacing lies between 50 mm and 2000 mm"),
                slips(practice("limit clampSpacing 18 mm source \"x\"")));
        assertEquals(List.of("reason-missing: nothing says where the figure comes from; say it in a few words: it"
                + " stands in every report"), slips(practice("limit clampSpacing 18 in source \" \"")));
        assertEquals(List.of("reason-missing: nothing says why the rule is treated otherwise; say it in a few words:"
                + " it stands in every report"), slips(practice("treat clamp-spacing as note because \"\"")));
    }

    @Test
    void aReasonIsNotLeftOut() throws BadCall {
        assertFalse(slips(practice("treat clamp-spacing as note")).isEmpty());
        assertFalse(slips(practice("limit clampSpacing 18 in")).isEmpty());
        assertFalse(slips(practice("treat clamp-spacing as fine because \"x\"")).isEmpty());
    }

    @Test
    void sayingTheSameTwiceIsASlip() throws BadCall {
        assertEquals(List.of("stated-twice: the limit clampSpacing is stated a second time, first at all.loom:3:5;"
                + " keep one of the two lines; the first one holds"),
                slips(practice("limit clampSpacing 18 in source \"x\"", "limit clampSpacing 19 in source \"x\"")));
        assertEquals(List.of("stated-twice: the treatment of clamp-spacing is stated a second time, first at"
                + " all.loom:3:5; keep one of the two lines; the first one holds"),
                slips(practice("treat clamp-spacing as note because \"x\"",
                        "treat clamp-spacing as error because \"x\"")));
    }

    @Test
    void theTableInTheDocumentsIsThatOfTheCode() throws IOException {
        String page = Files.readString(Repository.root().resolve("docs/engineering-basis.md"));
        String table = page.substring(page.indexOf("| limit | what it is |"), page.indexOf("## The checks"));
        List<String> rows = table.lines().filter(line -> line.startsWith("| `")).toList();
        assertEquals(Stream.of(Limit.values()).map(limit -> "| `" + limit.word() + "` | " + limit.meaning() + " | "
                + limit.usual() + " | " + limit.least() + " .. " + limit.most() + " | " + limit.basis() + " |")
                .toList(), rows);
        for (Limit limit : Limit.values()) {
            assertTrue(limit.allows(limit.usual()), limit.word());
        }
    }
}
