// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvTest {

    private static String row(String... cells) {
        Table table = new Table("t.csv", List.of("h"), List.of(List.of(cells)));
        return new String(Csv.bytes(table), StandardCharsets.UTF_8).substring("h\r\n".length());
    }

    /** The examples of RFC 4180, section 2, rules 1, 5, 6 and 7. */
    @Test
    @Tag("outside")
    void quotesAsRfc4180Does() {
        assertEquals("aaa,bbb,ccc\r\n", row("aaa", "bbb", "ccc"));
        assertEquals("aaa,\"b\r\nbb\",ccc\r\n", row("aaa", "b\r\nbb", "ccc"));
        assertEquals("aaa,\"b\"\"bb\",ccc\r\n", row("aaa", "b\"bb", "ccc"));
        assertEquals("\"a,b\",ccc\r\n", row("a,b", "ccc"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-0/+25", "@x"})
    void aCellIsNeverAFormula(String cell) {
        assertEquals("'" + cell + "\r\n", row(cell));
    }

    @Test
    void keepsEveryLetter() {
        assertEquals("Grüße ± 灯\r\n", row("Grüße ± 灯"));
        assertEquals("a,,b\r\n", row("a", "", "b"));
    }
}
