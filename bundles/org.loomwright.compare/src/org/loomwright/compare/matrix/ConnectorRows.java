// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.Set;
import org.loomwright.compare.matrix.RowMatcher.MatchedRow;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;

/** The rows of connectors and ground studs: name, place, part, mate. Alike are those at one place or with one mate. */
final class ConnectorRows {

    private final Project project;
    private final RowMatcher<Joint> matcher = new RowMatcher<>(true);

    ConnectorRows(Project project) {
        this.project = project;
    }

    /**
     * A connector or a stud.
     *
     * @param place where it is; empty when the drawing does not say
     * @param parts its housing; for a stud the ground that it is bolted to
     */
    private record Joint(String name, String title, Optional<String> place, List<Fact<Ref>> parts,
            List<Fact<Ref>> mates, Expression when, boolean stud) {
    }

    void add(int column, WiringView view) {
        List<Item<Joint>> items = new ArrayList<>();
        for (Connector each : view.wiring().connectors()) {
            items.add(item(column, new Joint(each.name().text(), each.title(), place(view, each.place(),
                    each.branch()), each.housing(), each.mates(), each.when(), false)));
        }
        for (Wiring.Stud each : view.wiring().studs()) {
            List<Fact<Ref>> ground = each.ground().map(ref -> new Fact<>(ref, new Expression.Always(), ref.span()))
                    .stream().toList();
            items.add(item(column, new Joint(each.name().text(), "", place(view, each.place(), each.branch()), ground,
                    List.of(), each.when(), true)));
        }
        matcher.add(items);
    }

    private static Optional<String> place(WiringView view, Optional<Ref> place, Optional<Ref> branch) {
        return place.or(() -> branch.flatMap(ref -> view.run(ref.text())).flatMap(Run::to)).map(Ref::text);
    }

    private Item<Joint> item(int column, Joint joint) {
        Set<String> features = new LinkedHashSet<>();
        String sort = joint.stud() ? "stud " : "connector ";
        joint.place().ifPresent(place -> features.add(sort + "at " + place));
        joint.mates().forEach(mate -> features.add(sort + "mates " + mate(mate.value())));
        return new Item<>(column, joint.name(), features, joint);
    }

    /** The other half by the position that its drawing fills: the facia of one year is that of another. */
    private String mate(Ref ref) {
        String owner = project.wiring(ref.owner()).flatMap(view -> view.wiring().position()).map(Ref::text)
                .orElse(ref.owner());
        return ref.text() + " of " + owner;
    }

    void write(RowList rows, Ends ends) {
        List<MatchedRow<Joint>> matched = matcher.rows();
        for (int i = 0; i < matched.size(); i++) {
            MatchedRow<Joint> row = matched.get(i);
            int number = i;
            row.items().forEach(item -> ends.put(item.column(), item.name(), Section.CONNECTORS, number));
            boolean stud = row.items().getFirst().element().stud();
            rows.element(Section.CONNECTORS, RowList.title(row, Joint::title));
            rows.add("", "name", row, item -> Stated.one(item.name(), item.element().when()));
            rows.add("", "at", row, item -> item.element().place()
                    .map(place -> Stated.one(place, new Expression.Always())).orElse(Cell.ABSENT));
            rows.add("", stud ? "on" : "part", row, item -> Stated.cell(item.element().parts(), "",
                    ref -> Value.of(ref.text(), "")));
            rows.add("", "mates", row, item -> Stated.cell(item.element().mates(), "",
                    ref -> Value.named(ref.toString(), "", mate(ref))));
        }
    }

    /** By row and column the name of the connector, or of the stud. */
    List<Map<Integer, String>> names(boolean studs) {
        return matcher.rows().stream().filter(row -> row.items().getFirst().element().stud() == studs)
                .map(row -> {
                    Map<Integer, String> names = new TreeMap<>();
                    row.items().forEach(item -> names.put(item.column(), item.name()));
                    return names;
                }).toList();
    }

    long compared() {
        return matcher.compared();
    }
}
