// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.project;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Relation;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.names.Around;
import org.loomwright.ide.names.PlatformOf;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Word;
import org.loomwright.lang.words.WordLines;

/** The vehicles that the condition of a line means, read off its words. */
public final class Meant {

    private final List<Word> words;
    private int at;

    private Meant(List<Word> words, int at) {
        this.words = words;
        this.at = at;
    }

    /** The platform that the conditions of a line are about. */
    public static Optional<PlatformView> platform(Moment moment, WordLines lines, Line line) {
        return platform(moment, lines.outwards(line));
    }

    /** The same for a line with the heads of the blocks around it, from the inside out. */
    public static Optional<PlatformView> platform(Moment moment, List<Line> path) {
        Optional<String> name = PlatformOf.line(moment.project(), path);
        Around around = Around.of(path);
        return name.map(moment.project().platforms()::get)
                .or(() -> moment.project().wiring(around.wiring()).map(WiringView::platform))
                .or(() -> name.isEmpty() && moment.project().platforms().size() == 1
                        ? moment.project().platforms().values().stream().findFirst() : Optional.empty());
    }

    /** The vehicles of the condition behind {@code when} on a line; empty where there is none that can be read. */
    public static Optional<Condition> by(Line line, PlatformView platform) {
        return expression(line).map(expression -> platform.vehicles().resolve(expression))
                .filter(resolution -> resolution.isGood()).map(resolution -> resolution.condition());
    }

    /** The condition behind {@code when}; empty where there is none that can be read. */
    public static Optional<Expression> expression(Line line) {
        if (!line.read()) {
            return Optional.empty();
        }
        for (int i = line.words().size() - 1; i >= 0; i--) {
            if (line.words().get(i).slot().word().equals("when")) {
                Meant reading = new Meant(line.words(), i + 1);
                try {
                    Expression read = reading.either();
                    return reading.at == line.words().size() ? Optional.of(read) : Optional.empty();
                } catch (IndexOutOfBoundsException e) {
                    return Optional.empty();
                }
            }
        }
        return Optional.empty();
    }

    /** What stands between {@code and}s so far; empty where that cannot be read. */
    public static Optional<Expression> conjunction(List<Word> words) {
        Meant reading = new Meant(words, 0);
        try {
            Expression read = reading.both();
            return reading.at == words.size() ? Optional.of(read) : Optional.empty();
        } catch (IndexOutOfBoundsException e) {
            return Optional.empty();
        }
    }

    private boolean takes(String word) {
        boolean there = at < words.size() && words.get(at).slot().word().equals(word);
        at += there ? 1 : 0;
        return there;
    }

    private Expression either() {
        List<Expression> parts = new java.util.ArrayList<>(List.of(both()));
        while (takes("or")) {
            parts.add(both());
        }
        return Expression.anyOf(parts);
    }

    private Expression both() {
        List<Expression> parts = new java.util.ArrayList<>(List.of(single()));
        while (takes("and")) {
            parts.add(single());
        }
        return Expression.allOf(parts);
    }

    private Expression single() {
        if (takes("not")) {
            return new Expression.Not(single());
        }
        if (takes("(")) {
            Expression inner = either();
            if (!takes(")")) {
                throw new IndexOutOfBoundsException("no closing bracket");
            }
            return inner;
        }
        Word first = words.get(at++);
        if (first.slot().target().equals("Choice")) {
            return new Expression.Choice(first.text());
        }
        Word second = words.get(at++);
        if (second.slot().target().equals("Member")) {
            if (!takes("..")) {
                throw new IndexOutOfBoundsException("no range");
            }
            return new Expression.Range(first.text(), second.text(), words.get(at++).text());
        }
        String sign = second.text();
        return new Expression.Compare(first.text(), Relation.ofSymbol(sign).orElse(Relation.EQ),
                words.get(at++).text());
    }
}
