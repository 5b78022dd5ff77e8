// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Source;

/** Where lines end, where blocks open and close, and what is done about braces that are lost or too many. */
class BracesTest {
    private static final String CANONICAL = """
            drawing d of orrin {
                circuit 12 LG/BK {
                    wire a 18 ga from J1:7 to S4
                    wire b from S4 {
                        size 18 ga
                    }
                }
                datum bulkhead
            }
            """;

    private static void assertSame(String text, String... problems) {
        Source read = Corpus.read(text);
        assertEquals(Spanless.describe(Corpus.read(CANONICAL).elements()), Spanless.describe(read.elements()), text);
        assertEquals(List.of(problems), Corpus.problems(text));
    }

    @Test
    void theLastLineNeedsNoEnd() {
        assertSame(CANONICAL.strip());
        assertEquals(1, Corpus.read("platform p").elements().size());
        assertEquals(List.of(), Corpus.problems("platform p"));
        assertEquals(List.of(), Corpus.problems("platform p // x"));
    }

    @Test
    void windowsLineEndsByteOrderMarkAndTabs() {
        assertSame(CANONICAL.replace("\n", "\r\n"));
        assertSame("\uFEFF" + CANONICAL);
        assertSame(CANONICAL.replace("    ", "\t"));
    }

    @Test
    void commentsAndBlankLinesAnywhere() {
        assertSame(CANONICAL.replace("\n", "  // c {\n\n/* } */\n"));
        assertSame(CANONICAL.replace("LG/BK", "/* over\n two lines */ LG/BK"));
    }

    @Test
    void bracesOnLinesOfTheirOwn() {
        assertSame(CANONICAL.replace(" {", "\n{"),
                "2:1+1 brace-line: put { at the end of the line whose block it opens",
                "4:1+1 brace-line: put { at the end of the line whose block it opens",
                "7:1+1 brace-line: put { at the end of the line whose block it opens");
    }

    @Test
    void blocksOnOneLine() {
        assertSame(CANONICAL.replace("{\n            size 18 ga\n        }", "{ size 18 ga }"),
                "4:26+4 brace-line: put what follows a brace on a line of its own");
        assertSame(CANONICAL.replaceAll("\\s*}\n", " }\n"), "5:24+1 brace-line: put } on a line of its own",
                "7:20+1 brace-line: put } on a line of its own");
    }

    @Test
    void bothBracesOfAnIndentedBlockLost() {
        assertSame(CANONICAL.replace("from S4 {", "from S4").replace("            size 18 ga\n        }\n",
                "            size 18 ga\n"), "4:23+0 brace-missing: { is missing at the end of this line",
                "6:5+1 brace-missing: } is missing before this line: the block of line 4 is still open");
    }

    @Test
    void aLineInTheWrongPlaceClosesNothing() {
        assertSame(CANONICAL.replace("    datum", "    wire x 18 ga\n    datum"),
                "8:5+4 line-unreadable: \"wire\" cannot start a line in a drawing; it belongs in a circuit");
        assertSame(CANONICAL.replace("            size", "            datum x\n            size"),
                "5:13+5 line-unreadable: \"datum\" cannot start a line in a wire; it belongs in a drawing or a "
                        + "harness");
    }

    @Test
    void braceTooMany() {
        assertSame(CANONICAL + "}\n", "10:1+1 brace-extra: there is no open block that this } could close");
        assertSame(CANONICAL + "{\n    platform x\n}\n",
                "10:1+1 brace-extra: this { follows no line that opens a block; what it holds is not read");
    }

    @Test
    void severalBracesLostInOneFile() {
        assertSame(CANONICAL.replace("LG/BK {", "LG/BK").replace("        }\n    }\n", "    }\n"),
                "2:21+0 brace-missing: { is missing at the end of this line",
                "6:5+1 brace-missing: } is missing before this line: the block of line 4 is still open");
        assertSame(CANONICAL.replaceAll("(?m)^ *}\n", ""),
                "6:5+5 brace-missing: } is missing before this line: the block of line 4 is still open",
                "7:1+0 brace-missing: } is missing at the end of the file: the block of line 1 is still open");
    }

    @Test
    void misspeltHeadersKeepTheirBlocks() {
        assertSame(CANONICAL.replace("circuit", "circut"),
                "2:5+6 line-unreadable: \"circut\" cannot start a line in a drawing; did you mean \"circuit\"?");
        assertSame(CANONICAL.replace("drawing d", "Drawing d"),
                "1:1+7 line-unreadable: \"Drawing\" cannot start a line in a file; did you mean \"drawing\"?");
    }

    @Test
    void unknownBlocksAreLeftOutWhole() {
        assertSame(CANONICAL.replace("    datum", "    gadget g {\n        part p {\n        }\n    }\n    datum"),
                "8:5+6 line-unreadable: \"gadget\" cannot start a line in a drawing");
    }

    @Test
    void bracesWithinQuotesAndCommentsAreText() {
        assertEquals(List.of(), Corpus.problems("platform p {\n    note \"{ } // {\" // }\n    /* { */\n}\n"));
    }

    @Test
    void nestedTooDeep() {
        String message = "nested-too-deep: the file is not read: braces are nested more than 20 or parentheses more "
                + "than 50 deep here";
        assertEquals(List.of("21:10+1 " + message), Corpus.problems("device d {\n".repeat(40)));
        assertEquals(List.of("2:57+1 " + message),
                Corpus.problems("platform p {\nnever " + "(".repeat(100_000) + "a" + ")".repeat(100_000) + "\n}\n"));
        assertEquals(List.of("2:207+3 " + message),
                Corpus.problems("platform p {\nnever " + "not ".repeat(100_000) + "a\n}\n"));
        assertEquals(List.of(),
                Corpus.problems("platform p {\nnever " + "(".repeat(50) + "a" + ")".repeat(50) + "\n}\n"));
    }
}
