// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.TextEdit;
import org.loomwright.ide.inlay.Inlay;
import org.loomwright.ide.outline.Colouring.Tint;
import org.loomwright.ide.outline.Colouring.Tinted;
import org.loomwright.ide.outline.Folds.Fold;
import org.loomwright.ide.outline.OutlineItem;
import org.loomwright.lang.Formatter;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Unit;

/** The shape of a file: outline, folds, colours, format, inlays. */
class ShapeTest {

    private static final String FRONT = "front-1964.loom";

    private final Bench orrin = Bench.orrin();

    @Test
    void theOutlineHasEverythingWithAName() {
        OutlineItem drawing = Services.outline(orrin.moment(), FRONT).getFirst();
        assertEquals("front64 Front lighting 1964", drawing.label());
        List<String> labels = drawing.children().stream().map(OutlineItem::label).toList();
        assertTrue(labels.containsAll(List.of("main", "bHeadL", "J1 Bulkhead plug", "12 Dipped beam")));
        OutlineItem circuit = drawing.children().stream().filter(each -> each.label().startsWith("12 ")).findFirst()
                .orElseThrow();
        assertEquals(List.of("S12", "a", "b", "c"), circuit.children().stream().map(OutlineItem::label).toList());
        String text = orrin.text(FRONT);
        assertTrue(text.substring(circuit.whole().offset(), circuit.whole().end()).endsWith("}"));
        assertEquals("12", text.substring(circuit.name().offset(), circuit.name().end()));
    }

    @Test
    void blocksAndCommentsFold() {
        String text = "// one\n// two\nplatform p {\n    years 1964 .. 1965\n    mode m {\n    }\n}\n";
        assertEquals(List.of(new Fold(1, 2, true), new Fold(3, 6, false)),
                Services.folds(Bench.of("a.loom", text).moment(), "a.loom"));
    }

    @Test
    void everyVisibleCharacterHasAColour() {
        for (var source : orrin.moment().project().sources()) {
            List<Tinted> tinted = Services.colours(orrin.moment(), source.file());
            StringBuilder rest = new StringBuilder(source.text());
            int last = 0;
            for (Tinted each : tinted) {
                assertTrue(each.offset() >= last, "in order, none over another");
                last = each.offset() + each.length();
                rest.replace(each.offset(), last, " ".repeat(each.length()));
                assertNotEquals(Tint.UNREAD, each.tint(), () -> source.file() + " " + each);
            }
            assertEquals("", rest.toString().replaceAll("[\\s{}]", ""), source.file());
        }
    }

    /** However white space is shaken, the edits lead to the form that the formatter gives. */
    @Test
    void theEditsOfFormattingLeadToTheCanonicalForm() {
        Random random = new Random(7);
        for (var source : orrin.moment().project().sources()) {
            StringBuilder shaken = new StringBuilder();
            for (char c : source.text().toCharArray()) {
                shaken.append(c);
                if (c == ' ' && random.nextInt(5) == 0 || c == '\n' && random.nextInt(8) == 0) {
                    shaken.append(c == ' ' ? "  " : random.nextBoolean() ? "\n\n" : "\t ");
                }
            }
            String text = shaken.toString();
            Bench bench = Bench.of("a.loom", text);
            List<TextEdit> edits = Services.format(bench.moment(), "a.loom");
            assertEquals(Formatter.format(text), bench.edited("a.loom", edits), source.file());
            assertTrue(edits.size() > 1 || text.length() < 200, "what is right is not touched");
        }
    }

    @Test
    void aRangeIsFormattedByItself() {
        String text = "platform p {\n  years   1964 .. 1965\n  place   box\n}\n";
        Bench bench = Bench.of("a.loom", text);
        int place = text.indexOf("place");
        assertEquals("platform p {\n  years   1964 .. 1965\n    place box\n}\n", bench.edited("a.loom",
                Services.format(bench.moment(), "a.loom", place, place + 3)));
        assertEquals(List.of(), Services.format(Bench.of("a.loom", Formatter.format(text)).moment(), "a.loom"));
    }

    @Test
    void formattingDamagedTextsAndOddSpacesAgreesWithTheFormatter() {
        List<String> odd = List.of("", "\n\n\n", "   ", "}", "{", "/* never ends\nplatform p {", "platform p {\r\n}\r\n",
                "platform\u00a0p\u00a0{ }", "a \"open\nb", "// only", "platform p { years 1 .. 2 }");
        for (String text : odd) {
            Bench bench = Bench.of("a.loom", text);
            assertEquals(Formatter.format(text), bench.edited("a.loom", Services.format(bench.moment(), "a.loom")),
                    text);
        }
    }

    @Test
    void inlaysTellCutLengthsAndVehicles() {
        List<Inlay> inlays = Services.inlays(orrin.moment(), FRONT, 0, orrin.text(FRONT).length(), Unit.MM,
                Cancel.NEVER);
        int wire = orrin.offset(FRONT, "wire a 14 ga from J1:1 to S12", 29);
        Inlay cut = inlays.stream().filter(each -> each.offset() == wire).findFirst().orElseThrow();
        assertEquals("cut 1005 mm", cut.text());
        assertTrue(cut.tooltip().contains("route 977.9 mm"), cut.tooltip());
        int head = orrin.offset(FRONT, "not late67 {", 10);
        assertEquals("11,520 vehicles", inlays.stream().filter(each -> each.offset() == head).findFirst()
                .orElseThrow().text());
        List<Inlay> some = Services.inlays(orrin.moment(), FRONT, wire - 5, wire, Unit.MM, Cancel.NEVER);
        assertEquals(List.of(cut), new ArrayList<>(some), "only what is asked for");
        assertEquals("cut 39.57 in", Services.inlays(orrin.moment(), FRONT, wire - 5, wire, Unit.IN, Cancel.NEVER)
                .getFirst().text(), "1005 mm at 25.4 mm an inch");
    }
}
