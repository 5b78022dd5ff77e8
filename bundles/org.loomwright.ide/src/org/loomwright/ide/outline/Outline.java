// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.outline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Span;
import org.loomwright.ide.names.Around;
import org.loomwright.ide.names.Names;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Slot.Sort;
import org.loomwright.lang.words.Word;
import org.loomwright.lang.words.WordLines;

/** What is in what, in one file. Linear in its lines; stateless. */
public final class Outline {

    private Outline() {
    }

    /** The outline of a file. */
    public static List<OutlineItem> of(Moment moment, String file) {
        WordLines lines = moment.words(file);
        List<List<OutlineItem>> children = new ArrayList<>();
        lines.lines().forEach(line -> children.add(new ArrayList<>()));
        List<OutlineItem> top = new ArrayList<>();
        for (int i = lines.lines().size() - 1; i >= 0; i--) {
            Line line = lines.lines().get(i);
            Optional<OutlineItem> item = item(line, lines, moment.lines(file), children.get(i));
            List<OutlineItem> into = line.parent() < 0 ? top : children.get(line.parent());
            item.ifPresentOrElse(each -> into.addFirst(each), () -> into.addAll(0, children.get(line.index())));
        }
        return List.copyOf(top);
    }

    private static Optional<OutlineItem> item(Line line, WordLines lines, LineIndex index,
            List<OutlineItem> children) {
        Optional<Word> name = line.name();
        if (name.isEmpty() || line.rule().equals("PinRow")) {
            return Optional.empty();
        }
        return Names.declares(name.get(), Around.of(lines, line), line).map(symbol -> new OutlineItem(symbol.kind(),
                sort(symbol, line), label(line, name.get()), detail(line, name.get()), span(index, name.get().offset(),
                        name.get().end()), span(index, line.offset(), line.close()), children));
    }

    private static String sort(Symbol symbol, Line line) {
        return symbol.kind() != Symbol.Kind.RUN ? symbol.kind().words()
                : line.rule().equals("Trunk") ? "trunk" : "branch";
    }

    private static String label(Line line, Word name) {
        return line.words().stream().filter(word -> word.slot().sort() == Sort.TEXT
                        && word.slot().feature().equals("title")).findFirst()
                .map(title -> name.text() + " " + title.text().replace("\"", "")).orElse(name.text());
    }

    /** What stands behind the name, without title and condition. */
    private static String detail(Line line, Word name) {
        StringBuilder detail = new StringBuilder();
        int end = -1;
        for (Word word : line.words()) {
            if (word.offset() <= name.offset() || word.slot().feature().equals("title")) {
                continue;
            }
            if (word.slot().sort() == Sort.KEYWORD && word.text().equals("when")) {
                break;
            }
            if (!detail.isEmpty() && word.offset() > end) {
                detail.append(' ');
            }
            detail.append(word.text());
            end = word.end();
        }
        return detail.toString();
    }

    private static Span span(LineIndex index, int from, int to) {
        return index.span(from, to - from);
    }

    /** The kind of what a line declares, for icons. */
    public static Optional<Symbol.Kind> kind(Line line, WordLines lines) {
        return line.name().flatMap(name -> Names.declares(name, Around.of(lines, line), line)).map(Symbol::kind);
    }
}
