// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Source;
import org.loomwright.harness.TextEdit;

/** A file full of mistakes, and word for word what is said of each. */
class MistakesTest {
    private static final String TEXT = Corpus.resource("mistakes.loom");

    private static Stream<String> shown(Problem problem) {
        Stream<String> edits = problem.edits().stream().map(edit -> "    " + edit.span().line() + ":"
                + edit.span().column() + "+" + edit.span().length() + " -> \"" + edit.text().replace("\n", "\\n")
                + "\"");
        return Stream.concat(Stream.of(Corpus.shown(problem)), edits);
    }

    @Test
    void eachIsNamedInItsPlace() {
        String found = Corpus.read(TEXT).problems().stream().flatMap(MistakesTest::shown)
                .collect(Collectors.joining("\n", "", "\n"));
        assertEquals(Corpus.resource("mistakes.txt"), found);
    }

    @Test
    void whatIsOfferedMendsIt() {
        List<Problem> mendable = Corpus.read(TEXT).problems().stream().filter(each -> !each.edits().isEmpty()).toList();
        assertTrue(mendable.size() > 30);
        for (Problem problem : mendable) {
            Source mended = Corpus.read(TextEdit.apply(TEXT, problem.edits()));
            assertFalse(mended.problems().stream().anyMatch(left -> left.code().equals(problem.code())
                    && left.span().line() == problem.span().line() && left.message().equals(problem.message())),
                    Corpus.shown(problem));
            assertTrue(mended.problems().size() <= Corpus.read(TEXT).problems().size(), Corpus.shown(problem)
                    + mended.problems().stream().map(Corpus::shown).collect(Collectors.joining("\n")));
        }
    }

    @Test
    void messagesAreOneSentenceInPlainWords() {
        for (Problem problem : Corpus.read(TEXT).problems()) {
            String message = problem.message();
            assertFalse(message.endsWith(".") || message.contains("RULE_") || message.contains("token")
                    || message.contains("\n"), message);
        }
    }
}
