// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Name;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.quantity.Spelling;

/** Collects what is wrong with names and conditions while a project is joined. Not safe for use by several threads. */
final class Problems {

    private final Map<String, Source> sources;
    private final Map<String, LineIndex> lines;
    private final List<Problem> found = new ArrayList<>();

    private Problems(Map<String, Source> sources, Map<String, LineIndex> lines) {
        this.sources = sources;
        this.lines = lines;
    }

    Problems(List<Source> sources) {
        this(new HashMap<>(), new HashMap<>());
        for (Source source : sources) {
            this.sources.put(source.file(), source);
            found.addAll(source.problems());
        }
    }

    /** Problems of a part of the same sources, beginning with none. */
    Problems ofPart() {
        return new Problems(sources, lines);
    }

    /** What was found so far, in the order in which it was found. */
    List<Problem> found() {
        return List.copyOf(found);
    }

    /** Adds what was found in a part. */
    void addAll(List<Problem> problems) {
        found.addAll(problems);
    }

    void add(String code, Span span, String message, String advice) {
        found.add(new Problem(code, span, message, advice, List.of()));
    }

    /** A name that nothing of that sort has. */
    void unknown(String sort, Ref ref, Collection<String> known) {
        unknown(sort, ref, known, Set.of());
    }

    /**
     * A name that nothing of that sort has.
     *
     * @param known what has a name in the project
     * @param ready names of what else lies ready; not listed, but one of them may have been meant
     */
    void unknown(String sort, Ref ref, Collection<String> known, Set<String> ready) {
        Set<String> all = new HashSet<>(known);
        all.addAll(ready);
        var near = Spelling.nearest(ref.text(), ready.isEmpty() ? known : all);
        Span name = new Span(ref.span().file(), ref.span().offset(), ref.text().length(), ref.span().line(),
                ref.span().column());
        String where = ref.owner().isEmpty() ? "" : " in \"" + ref.owner() + "\"";
        String advice = near.map(text -> "did you mean \"" + text + "\"?").orElse(known.isEmpty()
                ? "there is none; declare it, or check that its file lies in the project"
                : "known here: " + String.join(", ", known.stream().sorted(new NaturalOrder()).limit(8).toList())
                        + (known.size() > 8 ? ", ..." : ""));
        String stock = near.isPresent() || ready.isEmpty() ? "" : "; the stock has none of that name either";
        found.add(new Problem("name-unknown", name, "there is no " + sort + " named \"" + ref.text() + "\"" + where,
                advice + stock, near.map(text -> List.of(new TextEdit(name, text))).orElse(List.of()),
                near.filter(text -> Spelling.isSlip(ref.text(), text)).isPresent()));
    }

    /** A name that stands for two things. */
    void twice(String sort, Name again, Name first) {
        add("name-twice", again.span(), "the name \"" + again.text() + "\" stands for two " + sort + ", first at "
                + first.span().at(), "give one of them another name");
    }

    /** What the condition engine says of a condition that is written in the given file. */
    void condition(String file, org.loomwright.condition.Problem problem, Span fallback) {
        Span span = problem.offset() < 0 ? fallback : span(file, problem.offset(), problem.length());
        String code = "condition-" + problem.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
        found.add(new Problem(code, span, problem.message(),
                problem.candidate().map(text -> "did you mean \"" + text + "\"?").orElse(""),
                problem.candidate().filter(text -> problem.offset() >= 0 && problem.subject().length() > 0
                        && at(span).equals(problem.subject()))
                        .map(text -> List.of(new TextEdit(span, text))).orElse(List.of()),
                problem.candidate().filter(text -> Spelling.isSlip(problem.subject(), text)).isPresent()));
    }

    /** The first place of a text within a span; the span itself when it does not stand there. */
    Span find(String text, Span around) {
        Source source = sources.get(around.file());
        int at = source == null ? -1 : source.text().indexOf(text, around.offset());
        return at < 0 || at + text.length() > around.end() ? around : span(around.file(), at, text.length());
    }

    private String at(Span span) {
        Source source = sources.get(span.file());
        return source == null || span.end() > source.text().length() ? ""
                : source.text().substring(span.offset(), span.end());
    }

    private Span span(String file, int offset, int length) {
        Source source = sources.get(file);
        if (source == null) {
            return Span.NONE;
        }
        return lines.computeIfAbsent(file, name -> new LineIndex(name, source.text())).span(offset, length);
    }

    /** Everything found, ordered by place, then code. Equal problems are kept once. */
    List<Problem> ordered() {
        return found.stream().distinct().sorted(Comparator.comparing(Problem::span).thenComparing(Problem::code)
                .thenComparing(Problem::message)).toList();
    }
}
