// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Source;

/** A text with conflicts of a merge is read with the first side; each conflict is one problem. */
class ConflictsTest {

    private final LoomReader reader = LoomReader.create();

    private Source read(String text) {
        return reader.read("p.loom", text.getBytes(StandardCharsets.UTF_8));
    }

    private List<String> told(String text) {
        return read(text).problems().stream().map(problem -> problem.span().line() + " " + problem.code() + ": "
                + problem.message()).toList();
    }

    private static String platform(String lines) {
        return "platform p {\n    years 1964 .. 1971\n" + lines + "}\n";
    }

    @Test
    void theFirstSideIsReadAndTheFactIsNamed() {
        String text = platform("<<<<<<< HEAD\n    zone z \"Bay\" ambient 50 C\n=======\n"
                + "    zone z \"Bay\" ambient 60 C\n>>>>>>> feature\n");
        assertEquals(List.of("3 merge-conflict: zone z of platform p: ambient is 50 C in HEAD and 60 C in feature"),
                told(text));
        assertEquals(read(platform("    zone z \"Bay\" ambient 50 C\n")).elements().size(),
                read(text).elements().size());
    }

    @Test
    void theBaseBetweenTheSidesIsNotRead() {
        assertEquals(List.of("3 merge-conflict: zone z of platform p: ambient is 50 C in a and 60 C in b"),
                told(platform("<<<<<<< a\n    zone z ambient 50 C\n||||||| base\n    zone z ambient 40 C\n=======\n"
                        + "    zone z ambient 60 C\n>>>>>>> b\n")));
    }

    @Test
    void carriageReturnsAndSidesWithoutNamesAreRead() {
        assertEquals(List.of("3 merge-conflict: zone z of platform p: ambient is 50 C in the first side and 60 C in "
                + "the second side"), told(platform("<<<<<<<\n    zone z ambient 50 C\n=======\n"
                + "    zone z ambient 60 C\n>>>>>>>\n").replace("\n", "\r\n")));
    }

    @Test
    void severalLinesAreCounted() {
        assertEquals(List.of("3 merge-conflict: platform p: 2 lines in a, 1 in b"),
                told(platform("<<<<<<< a\n    zone z\n    zone y\n=======\n    place x\n>>>>>>> b\n")));
    }

    @Test
    void whatOneSideRemovedIsSaid() {
        assertEquals(List.of("3 merge-conflict: zone z of platform p: removed in a and changed in b"),
                told(platform("<<<<<<< a\n=======\n    zone z wet\n>>>>>>> b\n")));
    }

    @Test
    void aBlockWithTwoHeadsIsOneBlock() {
        String head = "<<<<<<< a\nplatform p \"One\" {\n=======\nplatform p \"Two\" {\n>>>>>>> b\n";
        assertEquals(List.of("1 merge-conflict: platform p: title is \"One\" in a and \"Two\" in b"),
                told(head + "    years 1964 .. 1971\n}\n"));
    }

    @Test
    void marksWithoutTheirPartnersAreToldAndTheRestIsRead() {
        assertEquals(List.of("3 merge-conflict: a conflict begins here and has no end"),
                told(platform("<<<<<<< a\n    zone z\n")));
        assertEquals(List.of("3 merge-conflict: a conflict ends here that begins nowhere"),
                told(platform(">>>>>>> b\n    zone z\n")));
    }

    @Test
    void noEditIsOfferedSinceSomebodyHasToChoose() {
        Source source = read(platform("<<<<<<< a\n    zone z\n=======\n    zone z wet\n>>>>>>> b\n"));
        for (Problem problem : source.problems()) {
            assertEquals(List.of(), problem.edits());
        }
    }

    @Test
    void formattingLeavesConflictsAlone() {
        String text = platform("<<<<<<< a\n  zone   z\n=======\n    zone z wet\n>>>>>>> b\n");
        assertEquals(text, Formatter.format(text));
    }
}
