// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Length;

/**
 * A jumper as text: a short lead from the end of a branch of ours to its place, for the vehicles in which the branch
 * does not reach. Each cavity goes straight through, as thick as the thickest wire that ends there.
 *
 * @param name its name
 * @param text its source
 */
public record JumperDraft(String name, String text) {

    private static final int MM_DECIMALS = 6;

    /** What a cavity of a connector carries. */
    private record Core(String title, String colour, Optional<ConductorSize> size) {
    }

    /**
     * Drafts one. Pure.
     *
     * @param harness  the harness that it lengthens
     * @param branch   the branch
     * @param vehicles the vehicles that it is for
     * @param length   how long it is
     */
    public static JumperDraft of(String name, WiringView harness, Run branch, Condition vehicles, Length length) {
        String place = branch.to().map(Ref::text).orElse("");
        NameBook names = new NameBook();
        names.take(place);
        StringBuilder out = new StringBuilder("// Lengthens branch ").append(branch.name().text())
                .append(" of harness ").append(harness.name()).append(" where it does not reach.\n// In these vehicles"
                        + " the branch mates this lead, and the lead what the branch mated.\n\nharness ").append(name)
                .append(" of ")
                .append(harness.platform().name()).append(vehicles.isAlways() ? "" : " when " + vehicles.words())
                .append(" {\n");
        harness.wiring().defaults().cable().stream().findFirst().ifPresent(cable -> out.append("    cable ")
                .append(cable.value()).append('\n'));
        out.append("    datum ").append(place).append("\n\n    branch ").append(names.take("lead")).append(" from ")
                .append(place).append(" to ").append(place).append(' ')
                .append(BigDecimal.valueOf(length.nanometres(), MM_DECIMALS).stripTrailingZeros().toPlainString())
                .append(" mm\n\n");
        StringBuilder circuits = new StringBuilder();
        NameBook numbers = new NameBook();
        for (ConnectorView each : harness.connectors().values()) {
            if (each.connector().branch().filter(ref -> ref.text().equals(branch.name().text())).isPresent()
                    && !each.when().excludes(vehicles)) {
                connector(each, place, harness, vehicles, names, numbers, out, circuits);
            }
        }
        return new JumperDraft(name, out.append('\n').append(circuits).append("}\n").toString());
    }

    private static void connector(ConnectorView ours, String place, WiringView harness, Condition vehicles,
            NameBook names, NameBook numbers, StringBuilder out, StringBuilder circuits) {
        String start = names.take(ours.name() + "in");
        String end = names.take(ours.name());
        String title = Block.quoted(ours.connector().title());
        out.append("    // The other half of ").append(ours.name()).append(" of ").append(harness.name())
                .append(": choose its housing.\n    connector ").append(start).append(title).append(" at ")
                .append(place).append(" mates ").append(ours.name()).append(" of ").append(harness.name()).append('\n');
        long housings = ours.housings().stream().filter(each -> !each.when().excludes(vehicles)).count();
        long mates = ours.mates().stream().filter(each -> !each.when().excludes(vehicles)).count();
        if (housings > 1 || mates > 1) {
            out.append("    // It differs between these vehicles: look at it.\n");
        }
        out.append("    connector ").append(end).append(title).append(" on lead")
                .append(first(ours.housings(), vehicles).map(part -> " is " + part.name().text()).orElse(""))
                .append(first(ours.mates(), vehicles).map(mate -> " mates " + mate.element()
                        + (mate.device() ? "" : " of " + mate.owner())).orElse(""))
                .append('\n');
        cores(ours, harness, vehicles).forEach((cavity, core) -> circuits.append("    circuit ")
                .append(numbers.take(cavity))
                .append(Block.quoted(core.title)).append(core.colour.isEmpty() ? "" : " " + core.colour)
                .append(" {\n        wire a")
                .append(core.size.map(size -> " " + size.written()).orElse("")).append(" from ").append(start)
                .append(':').append(cavity).append(" to ").append(end).append(':').append(cavity)
                .append("\n    }\n"));
    }

    /** What holds in the first of some vehicles. */
    private static <T> Optional<T> first(List<Case<T>> cases, Condition vehicles) {
        return cases.stream().filter(each -> !each.when().excludes(vehicles)).map(Case::value).findFirst();
    }

    private static Map<String, Core> cores(ConnectorView ours, WiringView harness, Condition vehicles) {
        Map<String, Core> cores = new TreeMap<>(new NaturalOrder());
        for (WireView wire : harness.wires()) {
            if (wire.when().excludes(vehicles)) {
                continue;
            }
            Core core = new Core(wire.circuit().title(), first(wire.colours(), vehicles).map(Colour::toString)
                    .orElse(""), wire.sizes().stream().map(Case::value)
                            .max((a, b) -> Double.compare(a.areaMm2(), b.areaMm2())));
            Stream.concat(wire.from().stream(), wire.to().stream()).filter(end -> !end.when().excludes(vehicles))
                    .map(Case::value).filter(end -> end.kind() == Node.Kind.CAVITY && end.owner().equals(harness.name())
                            && end.element().equals(ours.name()))
                    .forEach(end -> cores.merge(end.pin(), core, (a, b) -> a.size.isEmpty() || b.size.isPresent()
                            && b.size.get().areaMm2() > a.size.get().areaMm2() ? b : a));
        }
        return cores;
    }
}
