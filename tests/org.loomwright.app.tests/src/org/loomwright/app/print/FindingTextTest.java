// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.TextProject;
import org.loomwright.app.Texts;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Span;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Severity;

class FindingTextTest {

    private static Opened opened;

    @BeforeAll
    static void open() throws BadCall {
        opened = TextProject.open(TextProject.SMALL);
    }

    private static Span span(String what) {
        String text = opened.project().sources().getFirst().text();
        int offset = text.indexOf(what);
        String before = text.substring(0, offset);
        int line = (int) before.chars().filter(c -> c == '\n').count() + 1;
        return new Span("all.loom", offset, what.length(), line, offset - before.lastIndexOf('\n'));
    }

    private static Finding finding(Severity severity, boolean inherited, Optional<Finding.Acceptance> acceptance) {
        Condition all = opened.project().platforms().get("orrin").vehicles().all();
        Condition fog = all.vehicles().resolve(new Expression.Choice("fogLamps")).condition();
        return new Finding("too-thin", severity, inherited, "ours:1a", "wire 1a of ours", "the wire is \u001b[5mthin",
                List.of("one step", "another step"), "common practice",
                Optional.of(Finding.Affected.of(fog, false)),
                new Finding.Label(span("18 ga"), "too thin"), List.of(new Finding.Label(span("J1:1"), "fed from here")),
                "take a thicker one", List.of(), acceptance, "0");
    }

    private static String text(Finding finding, boolean colours) {
        StringBuilder out = new StringBuilder();
        new FindingText(Texts.of(opened.project().sources()), "demo/", new Palette(colours)).append(finding, out);
        return out.toString();
    }

    @Test
    void manyPlacesThatBelongToItAreFoldedSoThatItStaysWithinAScreen() {
        Finding few = finding(Severity.NOTE, false, Optional.empty());
        Finding many = new Finding(few.rule(), few.severity(), few.inherited(), few.element(), few.subject(),
                few.sentence(), few.derivation(), few.basis(), few.affected(), few.place(),
                Collections.nCopies(30, few.related().getFirst()), few.advice(), List.of(), Optional.empty(), "0");
        String text = text(many, false);
        assertEquals(3, text.split("::: demo/all.loom", -1).length - 1);
        assertTrue(text.contains("::: also demo/all.loom:62 (fed from here), demo/all.loom:62 (fed from here)"), text);
        assertTrue(text.contains(" and 15 more\n"), text);
        assertTrue(text.lines().count() < 40, text);
    }

    @Test
    void saysWhatWhereWhyForWhomAndWhatToTry() {
        assertEquals("""
                error[too-thin]: the wire is \u241b[5mthin
                  --> demo/all.loom:63:18 (wire 1a of ours)
                   |
                63 |             size 18 ga when not fogLamps
                   |                  ^^^^^ too thin
                   |
                  ::: demo/all.loom:62:21
                   |
                62 |         wire a from J1:1 to H1:1 {
                   |                     ^^^^ fed from here
                   |
                   = derivation: one step
                   =             another step
                   = basis: common practice
                   = vehicles: fogLamps, 2 of 4 vehicles
                   = try: take a thicker one

                """, text(finding(Severity.ERROR, false, Optional.empty()), false));
    }

    @Test
    void saysWhyItDoesNotCount() {
        assertTrue(text(finding(Severity.WARNING, true, Optional.empty()), false)
                .startsWith("warning[too-thin] (inherited): "));
        Finding.Acceptance waived = new Finding.Acceptance(Finding.Acceptance.How.WAIVED, "measured", span("platform"));
        String text = text(finding(Severity.NOTE, false, Optional.of(waived)), false);
        assertTrue(text.startsWith("note[too-thin] (waived): "), text);
        assertTrue(text.contains("   = accepted: measured (demo/all.loom:1:1)\n"), text);
    }

    @Test
    void coloursChangeNoWord() {
        Finding finding = finding(Severity.ERROR, false, Optional.empty());
        String coloured = text(finding, true);
        assertFalse(coloured.equals(text(finding, false)));
        assertEquals(text(finding, false), Palette.unpainted(coloured));
    }

    @Test
    void aProblemOfAFileThatWasNotReadHasNoExcerpt() {
        Finding finding = new Finding("not-text", Severity.ERROR, false, "", "", "the file is no text", List.of(), "",
                Optional.empty(), new Finding.Label(new Span("other.loom", 0, 0, 1, 1), ""), List.of(), "", List.of(),
                Optional.empty(), "0");
        assertEquals("error[not-text]: the file is no text\n  --> demo/other.loom:1:1\n\n", text(finding, false));
    }
}
