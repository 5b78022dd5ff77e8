// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;

/**
 * Finds parts that a project means to state and that could not be read: their names stand in a line of a catalogue that
 * is damaged, or that begins a part in a block whose own head is damaged. Looks only at files with problems, line by
 * line; linear in their text.
 */
final class DamagedParts {

    private static final Pattern WORD = Pattern.compile("\"[^\"]*\"?|[\\p{L}_][\\p{L}\\p{N}_.-]*|//.*");

    private final Set<String> names;
    private final Map<String, Span> found = new TreeMap<>();

    private DamagedParts(Set<String> names) {
        this.names = names;
    }

    /**
     * Of some names, those whose part could not be read, with the first place where it is stated.
     *
     * @param names names that are used for parts and that no part of the project has
     */
    static Map<String, Span> in(Collection<Source> sources, Set<String> names) {
        DamagedParts damaged = new DamagedParts(names);
        if (!names.isEmpty()) {
            sources.stream().filter(source -> !source.problems().isEmpty()).forEach(damaged::source);
        }
        return damaged.found;
    }

    private void source(Source source) {
        Set<Integer> damaged = source.problems().stream().map(problem -> problem.span().line())
                .collect(Collectors.toCollection(HashSet::new));
        LineIndex lines = new LineIndex(source.file(), source.text());
        boolean catalogue = false;
        boolean headless = false;
        List<String> texts = source.text().lines().toList();
        for (int i = 0; i < texts.size(); i++) {
            String text = texts.get(i);
            boolean hurt = damaged.contains(i + 1);
            if (!text.isBlank() && !Character.isWhitespace(text.charAt(0)) && text.charAt(0) != '}'
                    && !text.startsWith("//")) {
                catalogue = text.startsWith("catalogue");
                headless = hurt;
            } else if (catalogue && hurt || headless && text.stripTrailing().endsWith("{")) {
                line(lines, lines.start(i + 1), text);
            }
        }
    }

    /** A line that begins a part has its name among the first words, and only the name of its model after "like". */
    private void line(LineIndex lines, int start, String text) {
        boolean head = text.stripTrailing().endsWith("{");
        Matcher words = WORD.matcher(text);
        for (int i = 0; words.find() && (head || i < 2) && !words.group().equals("like"); i++) {
            if (names.contains(words.group())) {
                found.putIfAbsent(words.group(), lines.span(start + words.start(), words.group().length()));
            }
        }
    }
}
