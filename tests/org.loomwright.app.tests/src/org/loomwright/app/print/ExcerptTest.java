// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.loomwright.harness.Span;

class ExcerptTest {

    private static Excerpt mark(String source, String what) {
        int offset = source.indexOf(what);
        int line = (int) source.substring(0, offset).chars().filter(c -> c == '\n').count() + 1;
        return Excerpt.of(source, new Span("f", offset, what.length(), line, 1));
    }

    @Test
    void marksTheSpanInItsLine() {
        Excerpt excerpt = mark("first\nwire b from S4 to H9:1\nlast", "H9:1");
        assertEquals(new Excerpt(2, "wire b from S4 to H9:1", "                  ^^^^"), excerpt);
    }

    @Test
    void aTabReachesToTheNextMultipleOfFour() {
        assertEquals(new Excerpt(1, "    ab  c", "        ^"), mark("\tab\tc", "c"));
    }

    @Test
    void wideCharactersTakeTwoColumnsAndCombiningOnesNone() {
        assertEquals("    ^^^^", mark("灯灯左右", "左右").marks());
        assertEquals(" ^", mark("e\u0301x", "x").marks());
        assertEquals("  ^", mark("\ud83d\udea8x", "x").marks());
    }

    @Test
    void anEmptySpanHasOneCaretAndAtTheEndOfTheTextToo() {
        assertEquals(new Excerpt(2, "ab", "  ^"), Excerpt.of("x\nab", new Span("f", 4, 0, 2, 3)));
        assertEquals(new Excerpt(1, "", "^"), Excerpt.of("", new Span("f", 0, 0, 1, 1)));
        assertEquals(new Excerpt(9, "", "^"), Excerpt.of("", new Span("f", 70, 5, 9, 1)));
    }

    @Test
    void aSpanOfSeveralLinesIsMarkedToTheEndOfTheFirst() {
        assertEquals(new Excerpt(1, "ab {", " ^^^"), Excerpt.of("ab {\n  c\n}", new Span("f", 1, 8, 1, 2)));
    }

    @Test
    void carriageReturnsAreNotShown() {
        assertEquals(new Excerpt(1, "ab", "^^"), mark("ab\r\ncd\r\n", "ab"));
    }

    @Test
    void whatWouldMoveTheCursorOrTurnTheTextIsShownAsASign() {
        assertEquals("\u241b[31m \ufffdx", mark("\u001b[31m \u202ex", "x").text());
    }

    @Test
    void aLongLineIsCutAroundTheSpan() {
        Excerpt excerpt = mark("x".repeat(5_000) + "HERE" + "y".repeat(5_000), "HERE");
        assertEquals("HERE", excerpt.text().substring(excerpt.marks().indexOf('^'), excerpt.marks().length()));
        assertTrue(excerpt.text().length() < 200 && excerpt.text().startsWith("...") && excerpt.text().endsWith("..."));
    }
}
