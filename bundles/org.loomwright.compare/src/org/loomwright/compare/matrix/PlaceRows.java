// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.loomwright.compare.matrix.RowMatcher.MatchedRow;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;

/**
 * The rows of places: where the branch to a place leaves, how far from the datum that is, and how long the branch is.
 * A place has one row whatever its branch is called. The distance from the datum goes along the tree, so that drawings
 * that dimension from breakout to breakout can be read against those that dimension from the datum.
 */
final class PlaceRows {

    private final RowMatcher<Reach> matcher = new RowMatcher<>(true);

    /** The branches of one drawing that go to a place. */
    private record Reach(String title, HarnessTree tree, List<TreeRun> branches) {
    }

    void add(int column, WiringView view) {
        HarnessTree tree = HarnessTree.of(view);
        Map<String, List<TreeRun>> byPlace = new LinkedHashMap<>();
        for (TreeRun run : tree.runs()) {
            run.run().to().map(Ref::text).filter(place -> !place.isEmpty())
                    .ifPresent(place -> byPlace.computeIfAbsent(place, key -> new ArrayList<>()).add(run));
        }
        List<Item<Reach>> items = new ArrayList<>();
        byPlace.forEach((place, runs) -> items.add(new Item<>(column, place, Set.of(), new Reach(
                view.platform().place(place).map(each -> each.title()).orElse(""), tree, runs))));
        matcher.add(items);
    }

    void write(RowList rows) {
        for (MatchedRow<Reach> row : matcher.rows()) {
            String name = row.items().getFirst().name();
            String title = RowList.title(row, Reach::title);
            rows.element(Section.PLACES, title.equals(name) ? name : title + " (" + name + ")");
            rows.add("", "leaves at", row, item -> cell(item.element(),
                    run -> Value.of(leaving(item.element().tree(), run), "")));
            rows.add("", "from datum", row, item -> cell(item.element(), run -> station(item.element().tree(), run)));
            rows.add("", "branch", row, item -> cell(item.element(), run -> run.run().length()
                    .map(measure -> Stated.length("", measure, measure.length()))
                    .orElse(Value.of("unknown", ""))));
        }
    }

    private static Cell cell(Reach reach, Function<TreeRun, Value> value) {
        return new Cell(reach.branches().stream()
                .map(run -> value.apply(run).under(Stated.words(run.run().when()))).distinct().toList());
    }

    private static String leaving(HarnessTree tree, TreeRun run) {
        Spot start = run.start();
        return tree.datum().filter(start::equals).isPresent() ? "datum" : start.label();
    }

    private static Value station(HarnessTree tree, TreeRun run) {
        Spot start = run.start();
        Optional<Run.Breakout> breakout = tree.view().wiring().runs().stream()
                .flatMap(each -> each.breakouts().stream()).filter(each -> each.name().text().equals(start.name()))
                .findFirst().filter(each -> start.kind() == Spot.Kind.BREAKOUT);
        Optional<Length> length = tree.fromDatum(start).length();
        if (breakout.isEmpty()) {
            return new Value("at the datum", "", length.map(each -> each.nanometres() + "").orElse("unknown"), length,
                    false);
        }
        String before = breakout.get().after().isPresent() ? "+" : "";
        return Stated.length(before, breakout.get().at(), length);
    }

    long compared() {
        return matcher.compared();
    }
}
