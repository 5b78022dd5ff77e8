// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Device;
import org.loomwright.harness.Location;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;

/**
 * What the names in a drawing or harness mean. A name that nothing has stays a word, so that a file without its project
 * can be compared as well.
 */
final class Names {

    private final String owner;
    private final Map<String, Wiring> wirings;
    private final Platform platform;
    private final Map<String, ItemId> ends = new HashMap<>();
    private final Map<String, ItemId> points = new HashMap<>();
    private final Map<String, Set<String>> circuits = new HashMap<>();

    Names(Wiring wiring, Map<String, Wiring> wirings, Map<String, Platform> platforms) {
        this.owner = wiring.name().text();
        this.wirings = wirings;
        this.platform = platforms.get(wiring.platform().text());
        if (platform != null) {
            platform.devices().forEach(each -> end(Sort.DEVICE, platform.name().text(), each.name().text()));
        }
        for (Connector each : wiring.connectors()) {
            end(Sort.CONNECTOR, owner, each.name().text());
        }
        wiring.studs().forEach(each -> end(Sort.STUD, owner, each.name().text()));
        for (Device each : wiring.devices()) {
            end(Sort.DEVICE, owner, each.name().text());
        }
        for (Circuit circuit : wiring.circuits()) {
            circuit.splices().forEach(each -> end(Sort.SPLICE, owner, each.name().text()));
        }
        wiring.runs().forEach(run -> run.to().ifPresent(place -> place(place, wiring)));
        wiring.datum().ifPresent(place -> place(place, wiring));
        for (Run run : wiring.runs()) {
            if (run.kind() == Run.Kind.BRANCH) {
                point(Sort.RUN, run.name().text());
            }
            run.breakouts().forEach(each -> point(Sort.BREAKOUT, each.name().text()));
        }
    }

    private void end(Sort sort, String of, String name) {
        ends.put(name, new ItemId(sort, of, name));
    }

    private void point(Sort sort, String name) {
        points.put(name, new ItemId(sort, owner, name));
    }

    private void place(Ref place, Wiring wiring) {
        points.put(place.text(), new ItemId(Sort.PLACE, wiring.platform().text(), place.text()));
    }

    /** The end of a wire: {@code J1:7}. */
    Value end(Circuit.End end) {
        ItemId id = ends.get(end.target().text());
        Value target = id == null || !end.target().owner().isEmpty() ? Value.word(end.target().toString())
                : mention(id);
        return end.cavity().text().isEmpty() ? target : target.and(":" + end.cavity().text());
    }

    /** A breakout, a branch or a place. */
    Value point(Ref ref) {
        ItemId id = points.get(ref.text());
        return id == null ? Value.word(ref.text()) : mention(id);
    }

    /** What a connector plugs into. */
    Value mate(Ref ref) {
        if (!ref.owner().isEmpty()) {
            Wiring other = wirings.get(ref.owner());
            boolean device = other != null
                    && other.devices().stream().anyMatch(each -> each.name().text().equals(ref.text()));
            return mention(new ItemId(device ? Sort.DEVICE : Sort.CONNECTOR, ref.owner(), ref.text()));
        }
        ItemId id = ends.get(ref.text());
        return id == null ? Value.word(ref.text()) : mention(id);
    }

    /** A circuit of a drawing. */
    Value circuit(String drawing, String number) {
        return circuits.computeIfAbsent(drawing, this::numbers).contains(number)
                ? Value.mention(Sort.CIRCUIT, drawing, number) : Value.word(number);
    }

    private Set<String> numbers(String drawing) {
        Wiring other = wirings.get(drawing);
        return other == null ? Set.of()
                : other.circuits().stream().map(each -> each.name().text()).collect(Collectors.toSet());
    }

    /** Where a part or splice sits. */
    Value location(Location at) {
        Value where = at.point().map(this::point).orElse(Value.NONE);
        if (at.run().isPresent()) {
            where = Value.mention(Sort.RUN, owner, at.run().get().text());
        }
        return at.station().isEmpty() ? where : where.and(" at ").and(Measures.of(at.station().get()));
    }

    private Value mention(ItemId id) {
        boolean foreign = !id.owner().equals(owner) && id.sort() == Sort.CONNECTOR;
        return new Value(List.of(new Value.Mention(id, foreign)));
    }
}
