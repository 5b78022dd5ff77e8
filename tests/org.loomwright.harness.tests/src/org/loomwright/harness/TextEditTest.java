// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

class TextEditTest {

    private static TextEdit edit(int offset, int length, String text) {
        return new TextEdit(new Span("a.loom", offset, length, 1, offset + 1), text);
    }

    @Test
    void editsApplyInOrderOfPlaceWhateverTheirOrder() {
        assertEquals("wire b 16 ga", TextEdit.apply("wire a 18 ga", List.of(edit(7, 2, "16"), edit(5, 1, "b"))));
    }

    @Test
    void anEditOfLengthZeroInserts() {
        assertEquals("at 12 mm", TextEdit.apply("at 12", List.of(edit(5, 0, " mm"))));
    }

    @Test
    void untouchedTextStaysByteForByte() {
        String text = "a\r\n\tb  c // ä\n";
        assertEquals(text, TextEdit.apply(text, List.of()));
    }

    @Test
    void overlappingEditsAreRefused() {
        assertThrows(IllegalArgumentException.class,
                () -> TextEdit.apply("abcdef", List.of(edit(0, 3, "x"), edit(2, 2, "y"))));
    }

    @Test
    void anEditOutsideTheTextIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> TextEdit.apply("abc", List.of(edit(2, 2, "x"))));
    }
}
