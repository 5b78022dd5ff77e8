// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Load;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Protection;
import org.loomwright.electric.connection.Reach;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.rules.Counting;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A fuse, breaker or fusible link of ours whose opening takes one beam away from all headlamps. Lamps whose part is of
 * {@code type headlamp} count, and a beam is what the lamps have on pins of the same name. Where every lamp has a
 * device of its own behind it, only a note is left: a fault at one lamp then opens that lamp's device, as long as the
 * devices are selective.
 */
public final class OneDeviceDarkensBothHeadlamps implements Rule<Target.OfNetwork> {

    private static final String HEADLAMP = "headlamp";
    private static final RuleInfo INFO = new RuleInfo("one-device-darkens-both-headlamps",
            "Does one headlamp stay lit whatever device opens?", Severity.ERROR, Kind.ENGINEERING,
            Scope.PROTECTION_TREE, "common practice: one protective device must not darken both headlamps");

    /** One beam of one lamp. */
    private record Filament(Load load, Point.Spot pin, String words) {
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfNetwork> target() {
        return Target.OfNetwork.class;
    }

    @Override
    public void check(Target.OfNetwork target, Findings findings) {
        Connections connections = target.connections();
        Map<String, List<Filament>> beams = beams(connections);
        if (beams.values().stream().noneMatch(filaments -> filaments.size() > 1)) {
            return;
        }
        Reach fed = connections.live();
        for (Edge device : connections.edges()) {
            if (device.protection() != Protection.NONE && ours(connections, device)) {
                findings.checkCancelled();
                Reach without = connections.fed(supply -> true, edge -> edge != device);
                Reach unguarded = unguarded(connections, device, without);
                Map<Condition, List<Filament>> alone = new LinkedHashMap<>();
                Map<Condition, List<Filament>> ahead = new LinkedHashMap<>();
                for (List<Filament> filaments : beams.values()) {
                    Condition darkened = darkened(device, filaments, fed, without, each -> each.load().when());
                    Condition nearest = darkened(device, filaments, fed, without, each -> unguarded.at(each.pin()));
                    alone.computeIfAbsent(nearest, key -> new ArrayList<>()).addAll(filaments);
                    ahead.computeIfAbsent(darkened.minus(nearest), key -> new ArrayList<>()).addAll(filaments);
                }
                alone.forEach((when, filaments) -> report(device, filaments, when, true, findings));
                ahead.forEach((when, filaments) -> report(device, filaments, when, false, findings));
            }
        }
    }

    private static Map<String, List<Filament>> beams(Connections connections) {
        Map<String, List<Filament>> beams = new LinkedHashMap<>();
        for (Load load : connections.loads()) {
            if (load.part().kind() == Part.Kind.LAMP
                    && load.part().word(Part.WordKind.TYPE).filter(HEADLAMP::equalsIgnoreCase).isPresent()) {
                for (Point pin : load.pins()) {
                    if (pin instanceof Point.Spot spot) {
                        String name = spot.node().pin();
                        String title = load.part().pins().stream().filter(each -> each.name().text().equals(name))
                                .map(Part.Pin::title).findFirst().orElse("");
                        beams.computeIfAbsent(name, key -> new ArrayList<>())
                                .add(new Filament(load, spot, title.isEmpty() ? "pin " + name : title));
                    }
                }
            }
        }
        return beams;
    }

    private static boolean ours(Connections connections, Edge device) {
        return switch (device.link()) {
            case Link.Inside inside -> inside.holder().ours();
            case Link.OfWire wire -> connections.fitment().isOurs(wire.wire().owner());
            default -> false;
        };
    }

    /** What the device feeds with no other protective device between. */
    private static Reach unguarded(Connections connections, Edge device, Reach without) {
        Map<Point, Condition> starts = new LinkedHashMap<>();
        starts.put(device.b(), device.when().minus(without.at(device.b())));
        starts.put(device.a(), device.when().minus(without.at(device.a())));
        return connections.from(starts, edge -> edge.protection() == Protection.NONE && !edge.isGround());
    }

    /**
     * The vehicles in which opening a device takes a beam away from all headlamps that have it, and from at least two
     * of those that count.
     */
    private static Condition darkened(Edge device, List<Filament> filaments, Reach fed, Reach without,
            Function<Filament, Condition> counts) {
        List<Condition> lost = new ArrayList<>();
        Condition left = device.when().vehicles().none();
        for (Filament each : filaments) {
            Condition lit = each.load().when().and(fed.at(each.pin()));
            Condition dark = lit.minus(without.at(each.pin()));
            lost.add(dark.and(counts.apply(each)));
            left = left.or(lit.minus(dark));
        }
        return Counting.atLeast(2, lost, device.when()).minus(left);
    }

    private static void report(Edge device, List<Filament> filaments, Condition when, boolean nearest,
            Findings findings) {
        if (when.isNever()) {
            return;
        }
        List<Filament> there = filaments.stream().filter(each -> !each.load().when().excludes(when)).toList();
        String lamps = there.stream().map(each -> each.load().device().name()).distinct()
                .collect(Collectors.joining(" and "));
        String beam = there.stream().map(Filament::words).distinct().collect(Collectors.joining(" and "));
        String label = label(device);
        Draft draft = draft(device, label, findings).when(when).key(label + " " + beam + (nearest ? "" : " behind"))
                .weighs(nearest ? INFO.severity() : Severity.NOTE)
                .says(nearest ? label + " alone feeds " + beam + " of " + lamps
                        + ": when it opens, none of them is lit"
                        : "all current for " + beam + " of " + lamps + " passes " + label
                                + "; each lamp has a device of its own behind it, which has to open first")
                .step("without " + label + " no source reaches " + beam + " of any headlamp")
                .advise(nearest ? "give each headlamp a fuse of its own for " + beam
                        : "choose its rating so that the device of one lamp opens first on every fault behind it");
        there.forEach(each -> draft.see(each.load().device().device().name().span(),
                "headlamp " + each.load().device().name()));
        draft.report();
    }

    private static Draft draft(Edge device, String label, Findings findings) {
        if (device.link() instanceof Link.OfWire wire) {
            return findings.about(wire.wire()).at(wire.wire().wire().name().span(), "feeds both");
        }
        Link.Inside inside = (Link.Inside) device.link();
        Name name = inside.holder().name();
        Span span = name.span();
        return findings.about(inside.holder().owner(), name.text(), label).at(span, "feeds both");
    }

    private static String label(Edge device) {
        return FuseView.of(device).map(FuseView::label).orElseGet(() -> switch (device.link()) {
            case Link.OfWire wire -> "fusible link " + wire.wire().label();
            case Link.Inside inside -> "fusible link " + inside.holder().name();
            default -> "the device";
        });
    }
}
