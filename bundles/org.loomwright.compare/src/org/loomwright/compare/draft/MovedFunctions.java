// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.loomwright.compare.matrix.Alike;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.WiringView;

/**
 * Functions that are at another place in some drawings, and may have one branch that reaches all of their places: each
 * branch has nothing else at its end and no breakouts of its own, no vehicle has two of them, and what the connector
 * mates tells in each drawing which place it is.
 */
final class MovedFunctions {

    private final Cover cover;
    private final DraftRuns runs;
    private final Map<Map<Integer, String>, Set<String>> byRow = new HashMap<>();

    /**
     * @param runs with a branch to each place
     */
    MovedFunctions(Cover cover, DraftRuns runs, Alike alike) {
        this.cover = cover;
        this.runs = runs;
        for (Map<Integer, String> row : alike.connectors()) {
            Set<String> branches = new LinkedHashSet<>();
            Map<Integer, Run> theirs = new TreeMap<>();
            new TreeMap<>(row).forEach((column, name) -> connector(column, name).branch()
                    .flatMap(ref -> cover.views.get(column).run(ref.text())).ifPresent(run -> {
                        theirs.put(column, run);
                        branches.add(runs.point(column, run.name().text()));
                    }));
            if (branches.size() > 1 && theirs.size() == row.size() && isAlone(row, theirs, branches)) {
                byRow.put(row, branches);
            }
        }
    }

    private Connector connector(int column, String name) {
        return cover.views.get(column).connectors().get(name).connector();
    }

    private boolean isAlone(Map<Integer, String> row, Map<Integer, Run> theirs, Set<String> branches) {
        List<Condition> vehicles = new ArrayList<>();
        for (int c = 0; c < cover.views.size(); c++) {
            WiringView view = cover.views.get(c);
            int column = c;
            List<Run> here = view.wiring().runs(Run.Kind.BRANCH).stream()
                    .filter(run -> branches.contains(runs.point(column, run.name().text()))).toList();
            for (Run run : here) {
                Condition when = cover.in(column, run.when());
                if (!run.breakouts().isEmpty() || vehicles.stream().anyMatch(each -> !each.excludes(when))) {
                    return false;
                }
                vehicles.add(when);
            }
            boolean more = view.connectors().values().stream().anyMatch(each -> !each.name().equals(row.get(column))
                    && isOn(each.connector().branch().map(Ref::text).orElse(""), here))
                    || view.studs().values().stream().anyMatch(each -> isOn(each.stud().branch().map(Ref::text)
                            .orElse(""), here));
            boolean led = !theirs.containsKey(column) ? here.isEmpty()
                    : !connector(column, row.get(column)).mates().isEmpty();
            if (more || !led) {
                return false;
            }
        }
        return true;
    }

    private static boolean isOn(String branch, List<Run> runs) {
        return runs.stream().anyMatch(run -> run.name().text().equals(branch));
    }

    /** The functions: of each the branches to its places, of which the first may serve all. */
    List<Set<String>> all() {
        return byRow.values().stream().sorted((one, other) -> key(one).compareTo(key(other))).toList();
    }

    /** What a function is called between drafts. */
    static String key(Set<String> branches) {
        return String.join("+", branches);
    }

    /** The places of the function of a row: {@code hornSpot (front66), panel (front68)}. */
    String places(Map<Integer, String> row) {
        Map<String, Set<Integer>> places = new LinkedHashMap<>();
        new TreeMap<>(row).forEach((column, name) -> connector(column, name).branch()
                .flatMap(ref -> cover.views.get(column).run(ref.text())).flatMap(Run::to)
                .ifPresent(to -> places.computeIfAbsent(to.text(), key -> new TreeSet<>()).add(column)));
        return places.entrySet().stream().map(each -> each.getKey() + " (" + cover.names(each.getValue()) + ")")
                .collect(Collectors.joining(", "));
    }

    /** What the function of a row of connectors is called; empty when it has not moved. */
    String key(Map<Integer, String> row) {
        return byRow.containsKey(row) ? key(byRow.get(row)) : "";
    }
}
