// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fix;

import java.util.List;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.rules.Finding;

/**
 * A change of a source on account of a finding: one that was made, or one that is left to a person.
 *
 * @param file name of the file
 * @param line the line, from 1, as the file was when the finding was made
 * @param rule id of the rule, or code of the problem of the text
 * @param what what it changes, for people
 */
public record Change(String file, int line, String rule, String what) {

    private static final int LONGEST = 60;

    static Change of(Finding finding, Finding.Fix fix, String text) {
        Span span = fix.edits().getFirst().span();
        String title = fix.title();
        return new Change(span.file(), span.line(), finding.rule(),
                title.isBlank() || title.endsWith("?") || fix.edits().size() == 1 && !title.startsWith("remove")
                        ? words(fix.edits(), text) : title);
    }

    private static String words(List<TextEdit> edits, String text) {
        TextEdit edit = edits.getFirst();
        String old = edit.span().end() > text.length() ? ""
                : text.substring(edit.span().offset(), edit.span().end());
        String words = old.isEmpty() ? "insert " + quoted(edit.text())
                : edit.text().isEmpty() ? "remove " + quoted(old)
                : quoted(old) + " becomes " + quoted(edit.text());
        return edits.size() == 1 ? words : words + ", and " + (edits.size() - 1) + " more";
    }

    private static String quoted(String words) {
        String line = words.strip().lines().findFirst().orElse("");
        if (line.isEmpty()) {
            return words.indexOf('\n') >= 0 ? "a line end" : "a space";
        }
        return "\"" + (line.length() > LONGEST ? line.substring(0, LONGEST - 3) + "..." : line) + "\"";
    }
}
