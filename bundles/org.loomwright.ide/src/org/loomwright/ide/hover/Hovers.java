// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.ide.Shown;
import org.loomwright.ide.hover.Hover.Row;
import org.loomwright.ide.names.Around;
import org.loomwright.ide.names.Names.Named;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.project.Meant;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Slot.Sort;
import org.loomwright.lang.words.Word;
import org.loomwright.lang.words.WordLines;
import org.loomwright.quantity.Cancel;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.standard.StandardRules;

/** Tells what is known about the word at a place. Stateless. */
public final class Hovers {

    private Hovers() {
    }

    /** What is known; empty where there is nothing to say. */
    public static Optional<Hover> at(Moment moment, String file, int offset, Shown shown, Cancel cancel) {
        WordLines lines = moment.words(file);
        Optional<Word> word = lines.wordAt(offset);
        Optional<Line> line = lines.lineAt(offset);
        if (word.isEmpty() || line.isEmpty()) {
            return Optional.empty();
        }
        Span where = moment.lines(file).span(word.get().offset(), word.get().text().length());
        Optional<Named> named = moment.names().at(file, offset);
        List<Row> rows = new ArrayList<>();
        if (named.isPresent()) {
            Symbol symbol = named.get().symbol();
            String title = describe(moment, symbol, rows, shown, cancel);
            if (word.get().slot().target().equals("Choice") || word.get().slot().target().equals("Member")) {
                condition(moment, lines, line.get(), rows);
            }
            return Optional.of(new Hover(where, title, rows));
        }
        if (word.get().slot().sort() == Sort.KEYWORD && word.get().equals(line.get().words().getFirst())) {
            Optional<Word> name = line.get().name();
            Optional<Hover> ofName = name.flatMap(each -> at(moment, file, each.offset(), shown, cancel))
                    .map(hover -> new Hover(where, hover.title(), hover.rows()));
            return ofName.isPresent() ? ofName : Constructs.of(line.get().rule()).map(construct -> new Hover(where,
                    construct.meaning(), List.of(new Row("", construct.form()))));
        }
        if (isOfCondition(word.get(), line.get())) {
            condition(moment, lines, line.get(), rows);
            return rows.isEmpty() ? Optional.empty() : Optional.of(new Hover(where, "condition", rows));
        }
        return Figures.of(moment, lines, line.get(), word.get()).map(figure -> new Hover(where, figure.title(),
                figure.rows()));
    }

    private static boolean isOfCondition(Word word, Line line) {
        Optional<Word> when = line.words().stream().filter(each -> each.slot().word().equals("when"))
                .reduce((one, two) -> two);
        return when.isPresent() && word.offset() >= when.get().offset();
    }

    private static void condition(Moment moment, WordLines lines, Line line, List<Row> rows) {
        Around around = Around.of(lines, line);
        Optional<PlatformView> platform = Meant.platform(moment, lines, line);
        try {
            platform.flatMap(view -> Meant.by(line, view)).ifPresent(when -> {
                rows.add(new Row("this condition", Vehicles.of(when)));
                moment.project().wiring(around.wiring()).map(view -> view.when())
                        .filter(whole -> whole.vehicles() == when.vehicles() && !when.implies(whole))
                        .ifPresent(whole -> rows.add(new Row("of those of " + around.wiring(),
                                Vehicles.of(within(when, whole)))));
            });
        } catch (TooManyCombinations e) {
            rows.add(new Row("this condition", "too many combinations to count"));
        }
    }

    private static Condition within(Condition when, Condition whole) {
        return when.and(whole);
    }

    private static String describe(Moment moment, Symbol symbol, List<Row> rows, Shown shown,
            Cancel cancel) {
        return switch (symbol.kind()) {
            case WIRE -> WireHover.describe(moment, symbol, rows, shown);
            case PART -> PartHover.describe(moment, symbol.name(), rows);
            case PIN -> PartHover.pin(moment, symbol, rows);
            case CONNECTOR, SPLICE, STUD, DEVICE, CIRCUIT, RUN, BREAKOUT, PLACED ->
                    HarnessHover.describe(moment, symbol, rows, shown, cancel);
            case DRAWING, HARNESS, KIT, PRACTICE, CATALOGUE -> WholeHover.describe(moment, symbol, rows, cancel);
            case RULE -> rule(symbol, rows);
            case LIMIT -> limit(symbol, rows);
            default -> PlatformHover.describe(moment, symbol, rows, shown, cancel);
        };
    }

    private static String rule(Symbol symbol, List<Row> rows) {
        StandardRules.book().info(symbol.name()).ifPresent(info -> rule(info, rows));
        return "rule " + symbol.name();
    }

    private static void rule(RuleInfo info, List<Row> rows) {
        rows.add(new Row("", info.title()));
        rows.add(new Row("weighs", info.severity().words()));
        rows.add(new Row("basis", info.basis()));
    }

    private static String limit(Symbol symbol, List<Row> rows) {
        Limit.of(symbol.name()).ifPresent(limit -> {
            rows.add(new Row("", limit.meaning()));
            rows.add(new Row("usually", limit.usual() + ", from " + limit.least() + " to " + limit.most()));
            rows.add(new Row("basis", limit.basis()));
        });
        return "limit " + symbol.name();
    }
}
