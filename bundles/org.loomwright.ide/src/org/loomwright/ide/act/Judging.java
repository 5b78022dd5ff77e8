// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.act;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Slot;
import org.loomwright.lang.words.Word;
import org.loomwright.lang.words.WordLines;

/**
 * Lets a project judge otherwise, by changes of the text of a practice: only the words that say otherwise are touched.
 * Linear in the lines of the practice's file and the wishes; stateless.
 */
public final class Judging {

    private static final String INDENT = "    ";

    private final WordLines lines;
    private final LineIndex index;
    private final List<TextEdit> edits = new ArrayList<>();

    private Judging(WordLines lines, LineIndex index) {
        this.lines = lines;
        this.index = index;
    }

    /**
     * How the findings of a rule shall weigh.
     *
     * @param rule   id of the rule
     * @param weight as what they are treated; empty to weigh what the rule says
     * @param reason why; without meaning where nothing is treated otherwise
     */
    public record Wish(String rule, Optional<Practice.Weight> weight, String reason) {
    }

    /**
     * The changes after which a practice says what is wished; none for what it says already.
     *
     * @return empty where the practice is not there any more, or its end cannot be read
     */
    public static Optional<List<TextEdit>> edits(Moment moment, Practice practice, List<Wish> wishes) {
        String file = practice.span().file();
        Judging judging = new Judging(moment.words(file), moment.lines(file));
        return judging.head(practice.name().text()).map(head -> judging.edits(head, wishes));
    }

    /** The text of a file with a new practice, for every platform of the project. */
    public static String file(String name, List<Wish> wishes) {
        return "practice " + name + " {\n" + written(wishes, INDENT) + "}\n";
    }

    private Optional<Line> head(String name) {
        return lines.lines().stream().filter(line -> line.rule().equals("Practice")
                && line.name().filter(word -> word.text().equals(name)).isPresent())
                .filter(line -> !line.isHead() || lines.text().startsWith("}", line.close() - 1)).findFirst();
    }

    private List<TextEdit> edits(Line head, List<Wish> wishes) {
        List<Line> said = lines.lines().stream().filter(line -> line.parent() == head.index()
                && line.rule().equals("Treatment")).toList();
        List<Wish> added = new ArrayList<>();
        for (Wish wish : wishes) {
            Optional<Line> line = said.stream().filter(each -> each.text("rule").equals(wish.rule())).findFirst();
            if (line.isEmpty()) {
                wish.weight().ifPresent(weight -> added.add(wish));
            } else {
                wish.weight().ifPresentOrElse(weight -> change(line.get(), weight.words(), quoted(wish.reason())),
                        () -> edits.add(new TextEdit(owned(line.get()), "")));
            }
        }
        if (!added.isEmpty()) {
            add(head, said, added);
        }
        return List.copyOf(edits);
    }

    private void change(Line line, String weight, String reason) {
        boolean weighs = false;
        for (Word word : line.words()) {
            String wanted = weighs ? weight : word.slot().sort() == Slot.Sort.TEXT ? reason : word.text();
            if (!wanted.equals(word.text())) {
                edits.add(new TextEdit(index.span(word.offset(), word.text().length()), wanted));
            }
            weighs = word.text().equals("as");
        }
    }

    private void add(Line head, List<Line> said, List<Wish> wishes) {
        if (!head.isHead()) {
            edits.add(new TextEdit(index.span(head.end(), 0), " {\n" + written(wishes, INDENT) + "}"));
            return;
        }
        String indent = said.isEmpty() ? INDENT : before(said.getLast()).isBlank() ? before(said.getLast()) : INDENT;
        int brace = head.close() - 1;
        int start = said.isEmpty() ? index.start(index.line(brace)) : endOfLine(said.getLast());
        if (said.isEmpty() && !lines.text().substring(start, brace).isBlank() || start > brace) {
            edits.add(new TextEdit(index.span(brace, 0), "\n" + written(wishes, indent)));
        } else {
            edits.add(new TextEdit(index.span(start, 0), written(wishes, indent)));
        }
    }

    private String before(Line line) {
        return lines.text().substring(index.start(index.line(line.offset())), line.offset());
    }

    private int endOfLine(Line line) {
        int end = lines.text().indexOf('\n', line.end());
        return end < 0 ? lines.text().length() : end + 1;
    }

    /** A line with the comment lines right above it and the comment behind it: they are about it. */
    private Span owned(Line line) {
        int first = index.line(line.offset());
        while (first > 1 && lines.text().substring(index.start(first - 1), index.start(first)).strip()
                .startsWith("//")) {
            first--;
        }
        int start = before(line).isBlank() ? index.start(first) : line.offset();
        return index.span(start, endOfLine(line) - start);
    }

    private static String written(List<Wish> wishes, String indent) {
        StringBuilder text = new StringBuilder();
        for (Wish wish : wishes) {
            wish.weight().ifPresent(weight -> text.append(indent).append("treat ").append(wish.rule()).append(" as ")
                    .append(weight.words()).append(" because ").append(quoted(wish.reason())).append('\n'));
        }
        return text.toString();
    }

    private static String quoted(String reason) {
        return '"' + reason.strip().replaceAll("\\s+", " ").replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }
}
