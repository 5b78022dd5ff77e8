// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.Optional;
import java.util.function.Function;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;

/**
 * Changes of what is written, for rules that propose one. Each is empty where the text does not read as expected, so
 * that nothing is ever proposed blindly. Stateless; linear in the span.
 */
public final class Writing {

    private final Function<String, Optional<String>> texts;

    Writing(Function<String, Optional<String>> texts) {
        this.texts = texts;
    }

    private Optional<String> text(Span span) {
        return span.length() == 0 ? Optional.empty() : texts.apply(span.file())
                .filter(text -> span.end() <= text.length());
    }

    /** Writes other words in place of those that stand once in a span. */
    public Optional<TextEdit> replace(Span within, String old, String now) {
        Optional<String> text = text(within);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        int at = text.get().indexOf(old, within.offset());
        if (at < 0 || at + old.length() > within.end()
                || text.get().substring(at + 1, within.end()).contains(old)) {
            return Optional.empty();
        }
        return Optional.of(new TextEdit(new Span(within.file(), at, old.length(), within.line(),
                within.column() + at - within.offset()), now));
    }

    /** Takes out a line that holds a statement and nothing else, not even a comment. */
    public Optional<TextEdit> withoutLine(Span statement) {
        Optional<String> text = text(statement);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String all = text.get();
        int start = all.lastIndexOf('\n', Math.max(0, statement.offset() - 1)) + 1;
        boolean ends = statement.end() < all.length() && all.charAt(statement.end()) == '\n';
        if (!ends || start > statement.offset() || !all.substring(start, statement.offset()).isBlank()
                || all.substring(statement.offset(), statement.end()).indexOf('\n') >= 0
                || all.charAt(statement.end() - 1) == '{') {
            return Optional.empty();
        }
        return Optional.of(new TextEdit(new Span(statement.file(), start, statement.end() + 1 - start,
                statement.line(), 1), ""));
    }

    /** Writes something behind a statement that stands on one line. */
    public Optional<TextEdit> behind(Span statement, String added) {
        return text(statement).filter(text -> text.substring(statement.offset(), statement.end()).indexOf('\n') < 0
                && text.charAt(statement.end() - 1) != '{').map(text -> new TextEdit(new Span(statement.file(),
                statement.end(), 0, statement.line(), statement.column() + statement.length()), added));
    }
}
