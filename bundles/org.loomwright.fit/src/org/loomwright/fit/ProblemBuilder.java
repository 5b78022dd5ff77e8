// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.condition.Cells;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Spot;
import org.loomwright.harness.Measure.Provenance;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;

/** Puts a {@link FitProblem} together. One object for each. */
final class ProblemBuilder {

    private final WiringView harness;
    private final FitDefaults defaults;
    private final List<WiringView> drawings = new ArrayList<>();
    private final Map<String, FitRow> branchRows = new LinkedHashMap<>();
    private final Map<String, FitRow> unservedRows = new LinkedHashMap<>();
    private final Map<String, Provenance> lengths = new HashMap<>();
    private final List<FitColumn> columns = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();

    ProblemBuilder(WiringView harness, Project project, FitDefaults defaults) {
        this.harness = harness;
        this.defaults = defaults.with(harness.platform().limits());
        for (String name : harness.covers()) {
            project.wiring(name).filter(this::isOnThePlatform).ifPresent(drawings::add);
        }
    }

    FitProblem build() {
        HarnessTree whole = HarnessTree.of(harness);
        FactoryPaths paths = new FactoryPaths(whole);
        for (Run run : harness.wiring().runs(Run.Kind.BRANCH)) {
            String trunk = whole.run(run.name().text()).map(each -> paths.exits(each.start()).getFirst().run())
                    .orElse("");
            if (!run.name().text().isEmpty()) {
                branchRows.putIfAbsent(run.name().text(),
                        new FitRow(run.to().map(Ref::text).orElse(""), run.name().text(), trunk, run.span()));
            }
        }
        drawings.forEach(this::columns);
        List<FitRow> rows = Stream.concat(branchRows.values().stream(), unservedRows.values().stream()).toList();
        problems.sort(Comparator.comparing(Problem::span).thenComparing(Problem::code)
                .thenComparing(Problem::message));
        List<String> unjudged = harness.wiring().ours().covers().stream().map(Ref::text)
                .filter(name -> columns.stream().noneMatch(each -> each.drawing().equals(name))).distinct().toList();
        return new FitProblem(harness.name(), rows, columns, unjudged, evidence(),
                problems.stream().distinct().toList());
    }

    private boolean isOnThePlatform(WiringView drawing) {
        boolean same = drawing.when().vehicles() == harness.when().vehicles();
        if (!same) {
            problem("fit-platform", coverSpan(drawing.name()), "drawing \"" + drawing.name()
                    + "\" is of another platform than harness \"" + harness.name() + "\"",
                    "a harness covers drawings of its own platform");
        }
        return same;
    }

    private void columns(WiringView drawing) {
        Condition when = drawing.when().and(harness.when());
        if (when.isNever()) {
            problem("fit-vehicles", coverSpan(drawing.name()), "harness \"" + harness.name() + "\" covers drawing \""
                    + drawing.name() + "\", but is for none of its vehicles", "widen the condition of the harness");
            return;
        }
        List<Condition> conditions = Stream.concat(presence(drawing), Stream.concat(presence(harness),
                harness.wiring().ours().caps().stream().map(cap -> cap.when())))
                .filter(each -> !(each instanceof Expression.Always)).map(this::resolved).distinct().toList();
        Cells cells = when.split(conditions, FitProblem.MOST_GEOMETRIES);
        if (cells.complete()) {
            cells.list().forEach(cell -> columns.add(column(drawing, cell.vehicles(), cells.list().size() == 1)));
            return;
        }
        problem("fit-bounded", coverSpan(drawing.name()), "drawing \"" + drawing.name() + "\" has more than "
                + FitProblem.MOST_GEOMETRIES + " different shapes with harness \"" + harness.name()
                + "\"; they are judged together, with every branch in them", "split the drawing");
        columns.add(column(drawing, when, true));
    }

    private static Stream<Expression> presence(WiringView view) {
        return view.wiring().runs().stream().flatMap(run -> Stream.concat(Stream.of(run.when()),
                run.breakouts().stream().map(Run.Breakout::when)));
    }

    private FitColumn column(WiringView drawing, Condition vehicles, boolean whole) {
        ColumnBuilder builder = new ColumnBuilder(this, drawing, vehicles);
        List<FitColumn.Asked> asked = new ArrayList<>();
        builder.requirements().forEach((row, all) -> all
                .forEach(each -> asked.add(new FitColumn.Asked(index(row), each))));
        asked.sort(Comparator.comparingInt(FitColumn.Asked::row));
        return new FitColumn(drawing.name(), vehicles, whole, builder.trunks(), asked);
    }

    private int index(FitRow row) {
        int index = 0;
        for (FitRow each : branchRows.values()) {
            if (each == row) {
                return index;
            }
            index++;
        }
        for (FitRow each : unservedRows.values()) {
            if (each == row) {
                return index;
            }
            index++;
        }
        throw new IllegalStateException("no such row: " + row);
    }

    WiringView harness() {
        return harness;
    }

    FitDefaults defaults() {
        return defaults;
    }

    Condition resolved(Expression expression) {
        return harness.platform().vehicles().resolve(expression).condition();
    }

    FitRow branchRow(String branch) {
        return branchRows.get(branch);
    }

    FitRow unservedRow(String place, Span span) {
        return unservedRows.computeIfAbsent(place, key -> new FitRow(place, "", "", span));
    }

    /** True when another covered drawing has a branch to a place in some of the vehicles. */
    boolean isElsewhere(WiringView drawing, String place, Condition vehicles) {
        return drawings.stream().filter(each -> each != drawing).filter(each -> !each.when().excludes(vehicles))
                .anyMatch(each -> each.wiring().runs(Run.Kind.BRANCH).stream()
                        .filter(run -> run.to().filter(to -> to.text().equals(place)).isPresent())
                        .anyMatch(run -> !resolved(run.when()).and(each.when()).excludes(vehicles)));
    }

    /** Counts a dimension of a drawing as used. */
    void used(WiringView drawing, Spot dimension) {
        lengths.put(drawing.name() + "/" + dimension.run() + "/" + dimension.name(), dimension.step().provenance());
    }

    private Evidence evidence() {
        int[] counts = new int[Provenance.values().length];
        lengths.values().forEach(each -> counts[each.ordinal()]++);
        return new Evidence(counts[Provenance.SHEET.ordinal()], counts[Provenance.SAMPLE.ordinal()],
                counts[Provenance.SCALED.ordinal()], counts[Provenance.UNKNOWN.ordinal()]);
    }

    /** Where the harness says that it covers a drawing. */
    Span coverSpan(String drawing) {
        Optional<Ref> ref = harness.wiring().ours().covers().stream().filter(each -> each.text().equals(drawing))
                .findFirst();
        return ref.map(Ref::span).orElse(harness.wiring().name().span());
    }

    void problem(String code, Span span, String message, String advice) {
        problems.add(new Problem(code, span, message, advice, List.of()));
    }
}
