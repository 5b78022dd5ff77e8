// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.loomwright.compare.matrix.Alike;
import org.loomwright.compare.matrix.AlikeCircuits;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.ConductorSize;

/**
 * A lead between two connectors of different years, as text without its length: it joins the cavities that have the
 * same function in both drawings, one to one, and nothing else. What a function is, is told by what its circuit
 * connects beyond the connector, as in the {@linkplain org.loomwright.compare.matrix.Matrix matrix}; so two returns
 * that have cores of their own on one side are never joined.
 *
 * @param name   its name
 * @param text   its source
 * @param joints what is joined
 * @param open   cavities that are left open, with their function: what of one side has no way on the other
 */
public record AdaptorDraft(String name, String text, List<Joint> joints, List<String> open) {

    public AdaptorDraft {
        joints = List.copyOf(joints);
        open = List.copyOf(open);
    }

    /**
     * Two cavities that are joined.
     *
     * @param one    cavity of the first connector
     * @param other  cavity of the second
     * @param title  the function
     * @param size   the larger of the two sizes; empty when neither drawing states one
     * @param colour the first drawing's colour; empty when it states none
     */
    public record Joint(String one, String other, String title, String size, String colour) {
    }

    /** A connector of a drawing. */
    public record Side(WiringView drawing, ConnectorView connector) {

        private Optional<String> place() {
            return connector.connector().place().or(() -> connector.connector().branch()
                    .flatMap(ref -> drawing.run(ref.text())).flatMap(Run::to)).map(Ref::text);
        }

        private String label() {
            return connector.name() + " of " + drawing.name();
        }
    }

    /** A cavity that a circuit uses on one side, with the largest size that ends there. */
    private record Use(String cavity, Optional<ConductorSize> size) {
    }

    /**
     * Drafts one. Pure; grows with the number of elements of the two drawings.
     *
     * @param one   the connector whose place the lead's first end takes; it mates what this connector mates
     * @param other the connector that the lead's second end mates
     */
    public static AdaptorDraft of(String name, Project project, Side one, Side other, Cancel cancel) {
        Alike alike = Alike.of(project, List.of(one.drawing, other.drawing), cancel);
        List<Joint> joints = new ArrayList<>();
        TreeSet<String> open = new TreeSet<>(new NaturalOrder());
        for (AlikeCircuits row : alike.circuits()) {
            join(row, one, other, joints, open);
        }
        joints.sort((a, b) -> new NaturalOrder().compare(a.one, b.one));
        return new AdaptorDraft(name, text(name, project, one, other, joints, List.copyOf(open)), joints,
                List.copyOf(open));
    }

    private static void join(AlikeCircuits row, Side one, Side other, List<Joint> joints, TreeSet<String> open) {
        List<Use> here = uses(row.circuits().get(0), one);
        List<Use> there = uses(row.circuits().get(1), other);
        int both = Math.min(here.size(), there.size());
        for (int i = 0; i < both; i++) {
            Circuit circuit = row.circuits().get(0);
            String title = circuit.title().isEmpty() ? row.circuits().get(1).title() : circuit.title();
            String size = Stream.of(here.get(i), there.get(i)).flatMap(each -> each.size.stream())
                    .max((a, b) -> Double.compare(a.areaMm2(), b.areaMm2())).map(ConductorSize::written).orElse("");
            joints.add(new Joint(here.get(i).cavity, there.get(i).cavity, title, size, circuit.colours().stream()
                    .findFirst().map(fact -> fact.value().toString()).orElse("")));
        }
        here.stream().skip(both).forEach(each -> open.add(open(one, each, row.circuits().get(0))));
        there.stream().skip(both).forEach(each -> open.add(open(other, each, row.circuits().get(1))));
    }

    private static String open(Side side, Use use, Circuit circuit) {
        return side.connector.name() + ":" + use.cavity + " of " + side.drawing.name() + ", "
                + (circuit.title().isEmpty() ? "circuit " + circuit.name().text() : circuit.title());
    }

    private static List<Use> uses(Circuit circuit, Side side) {
        Map<String, Optional<ConductorSize>> uses = new LinkedHashMap<>();
        if (circuit != null) {
            for (Circuit.Wire wire : circuit.wires()) {
                Optional<ConductorSize> size = wire.sizes().stream().map(Fact::value)
                        .max((a, b) -> Double.compare(a.areaMm2(), b.areaMm2()));
                Stream.concat(wire.from().stream(), wire.to().stream()).map(Fact::value)
                        .filter(end -> end.target().text().equals(side.connector.name()))
                        .forEach(end -> uses.merge(end.cavity().text(), size, (a, b) -> a.isEmpty() || b.isPresent()
                                && b.get().areaMm2() > a.get().areaMm2() ? b : a));
            }
        }
        return uses.entrySet().stream().map(each -> new Use(each.getKey(), each.getValue())).toList();
    }

    private static String text(String name, Project project, Side one, Side other, List<Joint> joints,
            List<String> open) {
        Optional<ConnectorView.Mate> mate = one.connector.mates().stream().map(each -> each.value())
                .filter(each -> !each.device()).findFirst();
        String start = mate.flatMap(each -> project.wiring(each.owner()).flatMap(view -> Optional.ofNullable(
                view.connectors().get(each.element())).map(found -> new Side(view, found))))
                .flatMap(Side::place).or(one::place).orElse("");
        NameBook names = new NameBook();
        NameBook numbers = new NameBook();
        names.take(start);
        String first = names.take(one.connector.name());
        String second = names.take(other.connector.name());
        StringBuilder out = new StringBuilder("// Joins what has the same function in ").append(one.label())
                .append(" and ").append(other.label()).append(".\n");
        if (!open.isEmpty()) {
            out.append("// Left open, since the other side has no way for it:\n");
            open.forEach(each -> out.append("//     ").append(each).append('\n'));
        }
        out.append("\nharness ").append(name).append(" of ").append(one.drawing.platform().name())
                .append(other.drawing.when().isAlways() ? "" : " when " + other.drawing.when().words())
                .append(" {\n    datum ").append(start).append("\n\n    branch ").append(names.take("lead"))
                .append(" from ").append(start).append(" to ").append(other.place().orElse("")).append(" unknown\n\n");
        Connector theirs = one.connector.connector();
        out.append("    connector ").append(first).append(" at ").append(start)
                .append(theirs.housing().stream().findFirst().map(fact -> " is " + fact.value()).orElse(""))
                .append(mate.map(each -> " mates " + each.element() + " of " + each.owner()).orElse("")).append('\n')
                .append("    // The other half of ").append(other.label()).append(": choose its housing.\n")
                .append("    connector ").append(second).append(" on lead mates ").append(other.label())
                .append("\n\n");
        for (Joint joint : joints) {
            String number = numbers.take(joint.one);
            out.append("    circuit ").append(number).append(Block.quoted(joint.title))
                    .append(joint.colour.isEmpty() ? "" : " " + joint.colour).append(" {\n        wire a")
                    .append(joint.size.isEmpty() ? "" : " " + joint.size).append(" from ").append(first).append(':')
                    .append(joint.one).append(" to ").append(second).append(':').append(joint.other)
                    .append("\n    }\n");
        }
        return out.append("}\n").toString();
    }
}
