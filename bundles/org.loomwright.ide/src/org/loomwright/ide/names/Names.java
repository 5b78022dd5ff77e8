// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.names;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Slot.Sort;
import org.loomwright.lang.words.Word;
import org.loomwright.lang.words.WordLines;

/** All names that a project gives, and what any word of it means. Immutable; linear in the words of the project. */
public final class Names {

    private final Moment moment;
    private final Map<Symbol, List<Span>> declared;
    private final Meaning meaning;

    private Names(Moment moment, Map<Symbol, List<Span>> declared) {
        this.moment = moment;
        this.declared = declared;
        this.meaning = new Meaning(moment.project(), declared);
    }

    /** Collects the names of a project. */
    public static Names of(Moment moment) {
        Map<Symbol, List<Span>> declared = new LinkedHashMap<>();
        for (Source source : moment.project().everySource()) {
            for (Declared each : moment.declared(source.file())) {
                declared.computeIfAbsent(each.symbol(), key -> new ArrayList<>(1)).add(each.name());
            }
        }
        return new Names(moment, Collections.unmodifiableMap(declared));
    }

    /** A name that a file gives, and where. */
    public record Declared(Symbol symbol, Span name) {
    }

    /** The names that one file gives, in order. Linear in its words. */
    public static List<Declared> in(WordLines lines, LineIndex index) {
        List<Declared> declared = new ArrayList<>();
        for (Line line : lines.lines()) {
            for (Word word : line.words()) {
                if (word.slot().sort() == Sort.NAME) {
                    Meaning.declares(word, Around.of(lines, line), line).ifPresent(symbol -> declared
                            .add(new Declared(symbol, index.span(word.offset(), word.text().length()))));
                }
            }
        }
        return List.copyOf(declared);
    }

    /** What a name that is given somewhere stands for; the words around it decide. */
    public static Optional<Symbol> declares(Word word, Around around, Line line) {
        return Meaning.declares(word, around, line);
    }

    /** A word and what it names. */
    public record Named(Word word, Line line, Symbol symbol, Span span, boolean declares) {
    }

    /** Everything that has a name, with the places that give it, in order of file and place. */
    public Map<Symbol, List<Span>> declared() {
        return declared;
    }

    /** What the word at a place names. */
    public Optional<Named> at(String file, int offset) {
        WordLines lines = moment.words(file);
        return lines.lineAt(offset).flatMap(line -> lines.wordAt(offset)
                .flatMap(word -> named(file, lines, line, word)));
    }

    private Optional<Named> named(String file, WordLines lines, Line line, Word word) {
        return meaning.of(word, line, lines).map(symbol -> new Named(word, line, symbol,
                moment.lines(file).span(word.offset(), word.text().length()), word.slot().sort() == Sort.NAME));
    }

    /** What a word of a line means. */
    public Optional<Symbol> meaning(Word word, Line line, WordLines lines) {
        return meaning.of(word, line, lines);
    }

    /** Every word of the project's own files that names a thing, in order of file and place. */
    public List<Named> all(Symbol symbol) {
        Map<String, List<Named>> found = new TreeMap<>();
        for (Source source : moment.project().sources()) {
            found.put(source.file(), all(symbol, source.file()));
        }
        return found.values().stream().flatMap(List::stream).toList();
    }

    /** Every word of one file that names a thing. */
    public List<Named> all(Symbol symbol, String file) {
        WordLines lines = moment.words(file);
        List<Named> found = new ArrayList<>();
        for (Line line : lines.lines()) {
            for (Word word : line.words()) {
                if (isNamed(word, symbol)) {
                    named(file, lines, line, word).filter(each -> each.symbol().equals(symbol)).ifPresent(found::add);
                }
            }
        }
        return found;
    }

    private static boolean isNamed(Word word, Symbol symbol) {
        return switch (word.slot().sort()) {
            case NAME, REFERENCE, PIN -> word.text().equals(symbol.name())
                    || word.slot().target().equals("WaivedElement");
            default -> false;
        };
    }
}
