// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;
import org.loomwright.app.CompareRevisions.Compared;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.compare.Aspect;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.change.Felt;
import org.loomwright.compare.consequence.Effect;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.strip.StripLayout;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.WiringView;

/**
 * A comparison as one page of HTML without scripts and without anything from elsewhere, for screen and paper, keyboard
 * and screen reader. Whatever a colour says is said in words as well.
 */
public final class ComparePage {

    private static final String CAUTION = "This page tells what the sources state and what follows from that by"
            + " calculation. Before anything is built or fitted, somebody who knows the vehicle looks at it; local"
            + " codes, the vehicle's maker and whoever is licensed to do the work have the last word. Disconnect the"
            + " battery before you touch a harness.";

    private final StringBuilder out = new StringBuilder();
    private final Compared compared;
    private final List<Change> changes;

    private ComparePage(Compared compared) {
        this.compared = compared;
        this.changes = compared.comparison().changes();
    }

    /** The text of the page. */
    public static String of(Compared compared) {
        ComparePage page = new ComparePage(compared);
        page.write();
        return page.out.toString();
    }

    private static String escaped(String text) {
        return MatrixPage.escaped(text);
    }

    private void write() {
        String verdict = new CompareText(Palette.PLAIN, Integer.MAX_VALUE, true).verdict(compared).strip();
        String title = escaped(compared.now().place().name()) + ": what the revision changes";
        out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<title>").append(title)
                .append("</title>\n<meta name=\"viewport\" content=\"width=device-width\"/>\n<style>\n")
                .append(PageStyle.OF_COMPARISON)
                .append("</style>\n</head>\n<body>\n<a class=\"skip\" href=\"#changes\">To the changes</a>\n")
                .append("<main>\n<h1>")
                .append(title).append("</h1>\n<p class=\"verdict\">").append(escaped(verdict)).append("</p>\n<p>")
                .append(escaped(side(compared.old()))).append(" was before; ").append(escaped(side(compared.now())))
                .append(" takes its place.</p>\n");
        unread(compared.old());
        unread(compared.now());
        out.append("<h2 id=\"changes\">The changes</h2>\n");
        if (changes.isEmpty()) {
            out.append("<p>There is none.</p>\n");
        }
        for (Aspect aspect : Aspect.values()) {
            aspect(aspect);
        }
        strips();
        if (!compared.effects().isEmpty()) {
            out.append("<h2 id=\"follows\">What follows</h2>\n");
            compared.effects().forEach(this::effect);
        }
        out.append("<p class=\"caution\"><strong>Caution.</strong> ").append(CAUTION)
                .append("</p>\n</main>\n</body>\n</html>\n");
    }

    private static String side(Opened opened) {
        return opened.place().prefix().isEmpty() ? opened.place().name() : opened.place().prefix();
    }

    private void unread(Opened side) {
        List<Problem> problems = side.project().sources().stream().flatMap(each -> each.problems().stream()).toList();
        if (!problems.isEmpty()) {
            out.append("<h2>Not understood, and left out of this</h2>\n<ul>\n");
            problems.forEach(problem -> out.append("<li>").append(escaped(at(side, problem.span()) + ": "
                    + problem.message())).append("</li>\n"));
            out.append("</ul>\n");
        }
    }

    private static String at(Opened side, Span span) {
        return side.place().prefix() + span.file() + ":" + span.line();
    }

    private void head(String caption, List<String> columns) {
        out.append("<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"").append(escaped(caption))
                .append("\">\n<table>\n<caption>").append(escaped(caption)).append("</caption>\n<thead>\n<tr>");
        columns.forEach(column -> out.append("<th scope=\"col\">").append(escaped(column)).append("</th>"));
        out.append("</tr>\n</thead>\n<tbody>\n");
    }

    private void foot() {
        out.append("</tbody>\n</table>\n</div>\n");
    }

    private void aspect(Aspect aspect) {
        if (changes.stream().noneMatch(change -> change.aspect() == aspect)) {
            return;
        }
        head(aspect.words() + ": " + aspect.attention().words(),
                List.of("No.", "what", "change", "vehicles that feel it", "where"));
        for (int i = 0; i < changes.size(); i++) {
            Change change = changes.get(i);
            if (change.aspect() == aspect) {
                out.append("<tr id=\"c").append(i + 1).append("\"><th scope=\"row\">").append(i + 1).append("</th><td>")
                        .append(change.kind().words()).append("</td><td>").append(escaped(change.sentence()))
                        .append("</td><td>").append(escaped(vehicles(change.felt()))).append("</td><td>")
                        .append(escaped(where(change))).append("</td></tr>\n");
            }
        }
        foot();
    }

    private String where(Change change) {
        List<String> places = new ArrayList<>();
        change.after().ifPresent(span -> places.add(at(compared.now(), span)));
        change.before().ifPresent(span -> places.add("was at " + at(compared.old(), span)));
        return String.join("; ", places);
    }

    private static String vehicles(Felt felt) {
        String tally = felt.tally().isEmpty() || felt.words().equals("every vehicle") ? "" : " (" + felt.tally() + ")";
        return felt.words() + tally + (felt.caveat().isEmpty() ? "" : ", " + felt.caveat());
    }

    /** A column of a table of effects. */
    private record Column(String title, Function<Effect.Line, String> text) {
    }

    /** One kind of effect; a column that no line fills is left out. */
    private void effect(Effect effect) {
        List<Column> columns = Stream.of(new Column("what", Effect.Line::what),
                new Column("before", Effect.Line::before), new Column("after", Effect.Line::after),
                new Column("vehicles", Effect.Line::vehicles)).filter(column -> effect.lines().stream()
                .anyMatch(line -> !column.text().apply(line).isEmpty())).toList();
        List<String> titles = new ArrayList<>(List.of("effect", "about"));
        columns.forEach(column -> titles.add(column.title()));
        head(effect.title(), titles);
        for (Effect.Line line : effect.lines()) {
            out.append("<tr class=\"").append(line.direction().words()).append("\"><td>")
                    .append(line.direction().words()).append("</td><th scope=\"row\">").append(escaped(line.subject()))
                    .append("</th>");
            columns.forEach(column -> out.append("<td>").append(escaped(column.text().apply(line))).append("</td>"));
            out.append("</tr>\n");
        }
        foot();
    }

    /** Each harness and drawing that changed, along its trunks. */
    private void strips() {
        TreeSet<String> homes = new TreeSet<>();
        changes.forEach(change -> homes.add(FactSheet.home(change.item())));
        ChangedRuns now = new ChangedRuns(compared.comparison().now());
        ChangedRuns then = new ChangedRuns(compared.comparison().old());
        int number = 0;
        for (String home : homes) {
            Optional<HarnessTree> after = tree(compared.now(), home);
            Optional<HarnessTree> before = tree(compared.old(), home);
            Map<String, List<Integer>> gone = removed(then.of(home, changes));
            Map<String, List<Integer>> marks = now.of(home, changes);
            if (after.isPresent() && (!marks.isEmpty() || !gone.isEmpty())) {
                out.append("<h2 id=\"s").append(++number).append("\">").append(escaped(home))
                        .append(" along its trunks</h2>\n");
                strip("s" + number + "n", home + " as it is now", after.get(), marks, "change");
            }
            if (before.isPresent() && !gone.isEmpty()) {
                strip("s" + number + "o", home + " as it was", before.get(), gone, "removed");
            }
        }
    }

    private Map<String, List<Integer>> removed(Map<String, List<Integer>> marks) {
        Map<String, List<Integer>> gone = new HashMap<>();
        marks.forEach((name, numbers) -> {
            List<Integer> own = numbers.stream()
                    .filter(each -> changes.get(each - 1).kind() == Change.Kind.REMOVED).toList();
            if (!own.isEmpty()) {
                gone.put(name, own);
            }
        });
        return gone;
    }

    private static Optional<HarnessTree> tree(Opened side, String home) {
        Optional<WiringView> view = side.project().wiring(home);
        return view.map(HarnessTree::of).filter(tree -> !tree.isShapeless());
    }

    private void strip(String id, String caption, HarnessTree tree, Map<String, List<Integer>> marks, String word) {
        out.append("<figure class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"").append(escaped(caption))
                .append("\">\n<figcaption>").append(escaped(caption))
                .append(", to scale along each run. Thick lines, and numbers that lead to the table above, say where")
                .append(" something is ").append(word.equals("change") ? "changed" : "removed")
                .append(".</figcaption>\n")
                .append(StripSvg.of(StripLayout.of(tree), id, caption, marks, word)).append("</figure>\n");
    }
}
