// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Practice.Weight;
import org.loomwright.ide.act.Judging;
import org.loomwright.ide.act.Judging.Wish;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Severity;

/** Severities chosen from a list end in the text of a practice, where the check reads them. */
class JudgingTest {

    private static final String FILE = "practice.loom";

    private static String after(String text, Wish... wishes) {
        Bench bench = Bench.of(FILE, text);
        return bench.edited(FILE, Judging.edits(bench.moment(), bench.moment().project().practices().getFirst(),
                List.of(wishes)).orElseThrow());
    }

    private static Wish wish(String rule, Weight weight, String reason) {
        return new Wish(rule, Optional.of(weight), reason);
    }

    @Test
    void onlyTheWordsThatSayOtherwiseAreTouched() {
        String text = """
                // ours
                practice shop "Shop" {
                    // the clips
                    treat clamp-spacing   as note because "not ours"  // by phone
                    limit spliceSpacing 55 mm source "sleeves"
                }
                """;
        assertEquals(text, after(text, wish("clamp-spacing", Weight.NOTE, "not ours")));
        assertEquals(text.replace("as note", "as warning"), after(text, wish("clamp-spacing", Weight.WARNING,
                "not ours")));
        assertEquals(text.replace("not ours", "say \\\\ \\\"why\\\""), after(text, wish("clamp-spacing", Weight.NOTE,
                " say \\ \"why\"\n")));
        assertEquals(text.replace("by phone\n", "by phone\n    treat routes-differ as error because \"map\"\n"),
                after(text, wish("routes-differ", Weight.ERROR, "map")));
    }

    @Test
    void whatIsNoLongerTreatedGoesWithItsComments() {
        String text = """
                practice shop {

                    // the clips
                    treat clamp-spacing as note because "not ours" // by phone
                    treat routes-differ as error because "map"
                }
                """;
        assertEquals("practice shop {\n\n    treat routes-differ as error because \"map\"\n}\n", after(text,
                new Wish("clamp-spacing", Optional.empty(), ""), new Wish("spare-unknown", Optional.empty(), "")));
    }

    @Test
    void aPracticeWithoutLinesGetsThem() {
        String line = "    treat routes-differ as error because \"map\"\n";
        Wish wish = wish("routes-differ", Weight.ERROR, "map");
        assertEquals("practice shop {\n" + line + "}\n", after("practice shop\n", wish));
        assertEquals("practice shop {\n" + line + "}\n", after("practice shop {\n}\n", wish));
        assertEquals("practice shop {\n" + line + "}", Judging.file("shop", List.of(wish)).strip());
        Bench read = Bench.of(FILE, after("practice shop { }\n", wish));
        assertEquals(List.of(), read.moment().findings().stream().map(Finding::sentence).toList());
        assertEquals(1, read.moment().project().practices().getFirst().treatments().size());
    }

    @Test
    void aPracticeThatCannotBeReadIsLeftAlone() {
        Bench bench = Bench.of(FILE, "practice shop {\n    treat routes-differ as error because \"map\"\n}\n");
        var practice = bench.moment().project().practices().getFirst();
        assertEquals(Optional.empty(), Judging.edits(Bench.of(FILE, "practice shop {\n").moment(), practice,
                List.of(wish("routes-differ", Weight.NOTE, "map"))));
        assertEquals(Optional.empty(), Judging.edits(Bench.of(FILE, "practice other\n").moment(), practice,
                List.of(wish("routes-differ", Weight.NOTE, "map"))));
    }

    @Test
    void theCheckJudgesAccordingly() throws IOException {
        String broken = "cavity-taken-twice";
        Bench bench = Bench.of("a.loom", Files.readString(Bench.ROOT.resolve("docs/examples/broken/" + broken
                + ".loom"))).with(FILE, "practice shop\n");
        assertEquals(Set.of(Severity.ERROR), severities(bench, broken));
        bench.with(FILE, bench.edited(FILE, Judging.edits(bench.moment(), bench.moment().project().practices()
                .getFirst(), List.of(wish(broken, Weight.NOTE, "to see it"))).orElseThrow()));
        assertEquals(Set.of(Severity.NOTE), severities(bench, broken));
    }

    private static Set<Severity> severities(Bench bench, String rule) {
        return bench.checked().findings().stream().filter(each -> each.rule().equals(rule)).map(Finding::severity)
                .collect(Collectors.toSet());
    }
}
