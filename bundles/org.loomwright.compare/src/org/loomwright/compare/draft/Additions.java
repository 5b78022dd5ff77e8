// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;

/**
 * Lines that are added to a text as people laid it out: each stands on a line of its own, and everything that is there
 * keeps its bytes, comments behind an element too.
 */
final class Additions {

    private static final String STEP = "    ";

    private final String text;
    private final List<TextEdit> edits = new ArrayList<>();
    private final Map<Span, List<String>> inside = new LinkedHashMap<>();

    Additions(String text) {
        this.text = text;
    }

    /** Adds lines behind an element and the comment behind it, indented as it is. */
    void after(Span element, List<String> lines) {
        int end = text.indexOf('\n', element.end());
        int line = end < 0 ? text.length() : end;
        String rest = text.substring(element.end(), line).strip();
        boolean free = rest.isEmpty() || rest.startsWith("//");
        String indent = indent(element.offset());
        insert(element, free ? line : element.end(), "\n" + indent + String.join("\n" + indent, lines)
                + (free ? "" : "\n" + indent));
    }

    /** Adds lines before an element, and before the lines of comment that stand right above it. */
    void before(Span element, List<String> lines) {
        int at = lineStart(element.offset());
        String indent = indent(element.offset());
        if (!text.substring(at, element.offset()).isBlank()) {
            insert(element, element.offset(), "\n" + indent + String.join("\n" + indent, lines) + "\n" + indent);
            return;
        }
        while (at > 0 && text.substring(lineStart(at - 1), at).strip().startsWith("//")) {
            at = lineStart(at - 1);
        }
        insert(element, at, lines(indent, lines));
    }

    /** Adds a line right above an element, below its comments. */
    void above(Span element, String line) {
        int at = lineStart(element.offset());
        String indent = indent(element.offset());
        boolean first = text.substring(at, element.offset()).isBlank();
        insert(element, first ? at : element.offset(), first ? lines(indent, List.of(line)) : "\n" + indent + line
                + "\n" + indent);
    }

    /** Adds lines at the end of the block of an element, which gets one if it has none. */
    void into(Span element, List<String> lines) {
        inside.computeIfAbsent(element, key -> new ArrayList<>()).addAll(lines);
    }

    /** Writes something else in place of an element. */
    void replace(Span span, String other) {
        edits.add(new TextEdit(span, other));
    }

    /** Takes an element out, with its line where it stands alone on it. */
    void remove(Span element) {
        int start = lineStart(element.offset());
        int end = element.end();
        boolean alone = text.substring(start, element.offset()).isBlank() && end < text.length()
                && text.charAt(end) == '\n';
        edits.add(new TextEdit(alone ? new Span(element.file(), start, end + 1 - start, element.line(), 1) : element,
                ""));
    }

    /** What is written there. */
    String written(Span span) {
        return text.substring(span.offset(), span.end());
    }

    /** The changes, in the order in which they were asked for where they are at one place. */
    List<TextEdit> edits() {
        List<TextEdit> all = new ArrayList<>(edits);
        inside.forEach((element, lines) -> {
            String indent = indent(element.offset());
            String added = lines(indent + STEP, lines);
            int brace = element.end() - 1;
            if (text.charAt(brace) != '}') {
                all.add(edit(element, element.end(), " {\n" + added + indent + "}"));
            } else if (text.substring(lineStart(brace), brace).isBlank()) {
                all.add(edit(element, lineStart(brace), added));
            } else {
                all.add(edit(element, brace, "\n" + added + indent));
            }
        });
        return all;
    }

    private static String lines(String indent, List<String> lines) {
        return indent + String.join("\n" + indent, lines) + "\n";
    }

    private void insert(Span element, int at, String added) {
        edits.add(edit(element, at, added));
    }

    private static TextEdit edit(Span element, int at, String added) {
        return new TextEdit(new Span(element.file(), at, 0, element.line(), 1), added);
    }

    private int lineStart(int offset) {
        return text.lastIndexOf('\n', offset - 1) + 1;
    }

    private String indent(int offset) {
        int start = lineStart(offset);
        int end = start;
        while (end < text.length() && (text.charAt(end) == ' ' || text.charAt(end) == '\t')) {
            end++;
        }
        return text.substring(start, end);
    }
}
