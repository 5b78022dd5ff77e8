// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.adopt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.app.BadCall;
import org.loomwright.app.TextProject;
import org.loomwright.app.adopt.AdoptChange.Adopted;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.change.Change;
import org.loomwright.harness.TextEdit;

/** A change that is taken over is no change any more, whichever side takes it. */
class AdoptChangeTest {

    private static final String OLD = TextProject.SMALL;

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "branch b1 from wing to lamp 250 mm|branch b1 from wing to lamp 260 mm",
        "serviceLoop|serviceLoop",
        "breakout wing at 510 mm|breakout wing at 520 mm",
        "size 18 ga when not fogLamps|size 20 ga when not fogLamps",
        "circuit 1 \"Lamp\" BK|circuit 1 \"Lamp\" WH",
        "cap b2 at lamp within 400 mm when not fogLamps|cap b2 at lamp within 450 mm when not fogLamps",
        "connector F1 on b2 is plug2 when fogLamps|connector F1 on b2 is plug2",
        "terminal 1 is tab63|terminal 2 is tab63",
        "contains plug2 quantity 2 when fogLamps|contains plug2 quantity 3 when fogLamps",
        "harness ours \"Front\"|harness ours \"Front loom\"",
        "temperature 85 C|temperature 105 C"})
    void theSameIsStatedAfterwards(String before, String after) throws BadCall {
        assertTrue(before.equals("serviceLoop") || OLD.contains(before), before);
        String now = before.equals("serviceLoop")
                ? OLD.replace("    cuttingGrid 5 mm\n", "    cuttingGrid 5 mm\n    serviceLoop 40 mm\n")
                : replaceFirst(OLD, before, after);
        Comparison comparison = compare(OLD, now);
        assertFalse(comparison.changes().isEmpty());
        for (Change change : comparison.changes()) {
            Adopted forth = AdoptChange.take(comparison, change, false, OLD, now, "all.loom");
            assertEquals("", forth.refusal(), change.sentence());
            gone(change, compare(TextEdit.apply(OLD, forth.edits()), now));
            Adopted back = AdoptChange.take(comparison, change, true, OLD, now, "all.loom");
            assertEquals("", back.refusal(), change.sentence());
            gone(change, compare(OLD, TextEdit.apply(now, back.edits())));
        }
    }

    @Test
    void whatOneSideLacksIsInsertedWithItsCommentAndTakenAwayAgain() throws BadCall {
        String now = replaceFirst(OLD, "    connector H1 on b1 is plug2\n",
                "    connector H1 on b1 is plug2\n    // for the second lamp\n    connector H2 on b1 is plug2 {\n"
                + "        terminal 1 is tab63\n    }\n");
        Comparison comparison = compare(OLD, now);
        Change added = comparison.changes().stream().filter(each -> each.kind() == Change.Kind.ADDED).findFirst()
                .orElseThrow();
        assertEquals(now, TextEdit.apply(OLD,
                AdoptChange.take(comparison, added, false, OLD, now, "all.loom").edits()));
        assertEquals(OLD, TextEdit.apply(now,
                AdoptChange.take(comparison, added, true, OLD, now, "all.loom").edits()));
    }

    @Test
    void aWholeDrawingGoesToTheEnd() throws BadCall {
        String more = "drawing other \"Other\" of orrin when year = 1967 {\n    datum bulkhead\n}\n";
        Comparison comparison = compare(OLD, OLD + more);
        Change added = comparison.changes().stream().filter(each -> each.kind() == Change.Kind.ADDED).findFirst()
                .orElseThrow();
        String taken = TextEdit.apply(OLD, AdoptChange.take(comparison, added, false, OLD, OLD + more, "all.loom")
                .edits());
        assertEquals(Optional.empty(), compare(taken, OLD + more).changes().stream().findFirst());
    }

    @Test
    void lineEndsOfTheChangedSideStay() throws BadCall {
        String old = OLD.replace("\n", "\r\n");
        String now = replaceFirst(OLD, "    connector H1 on b1 is plug2\n",
                "    connector H1 on b1 is plug2\n    connector H2 on b1 is plug2\n");
        Comparison comparison = compare(old, now);
        Change added = comparison.changes().getFirst();
        String taken = TextEdit.apply(old, AdoptChange.take(comparison, added, false, old, now, "all.loom").edits());
        assertEquals(now.replace("\n", "\r\n"), taken);
    }

    @Test
    void aNewNameIsRefusedWithAReason() throws BadCall {
        String now = OLD.replace("breakout wing at 500 mm\n    }\n    branch b1 from wing to lamp 250 mm\n"
                + "    branch b2 from wing", "breakout fender at 500 mm\n    }\n"
                + "    branch b1 from fender to lamp 250 mm\n    branch b2 from fender");
        Comparison comparison = compare(OLD, now);
        Change renamed = comparison.changes().stream().filter(each -> each.kind() == Change.Kind.RENAMED).findFirst()
                .orElseThrow();
        Adopted adopted = AdoptChange.take(comparison, renamed, false, OLD, now, "all.loom");
        assertEquals(List.of(), adopted.edits());
        assertEquals("what is renamed cannot be taken over alone; edit the text", adopted.refusal());
    }

    private static void gone(Change change, Comparison afterwards) {
        assertTrue(afterwards.changes().stream().noneMatch(each -> each.sentence().equals(change.sentence())),
                change.sentence());
    }

    private static String replaceFirst(String text, String before, String after) {
        int at = text.lastIndexOf(before);
        assertTrue(at >= 0, before);
        return text.substring(0, at) + after + text.substring(at + before.length());
    }

    private static Comparison compare(String old, String now) throws BadCall {
        return new FactComparer().compare(TextProject.open(old).project(), TextProject.open(now).project());
    }
}
