// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.Section;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Dimension;
import org.loomwright.quantity.Quantity;
import org.loomwright.rules.Shapes;

/**
 * What lies together in the stretches of a network, where these lead, and what figures of cables and zones come to,
 * each worked out once: many wires share a stretch. For one thread.
 */
final class Bundles {

    private final Map<Section, Map<Condition, Bundle>> known = new IdentityHashMap<>();
    private final Map<Section, Map<WireView, Condition>> there = new IdentityHashMap<>();
    private final Map<String, Map<String, Optional<String>>> places = new HashMap<>();
    private final Map<PlatformView, Map<String, Optional<Platform.Zone>>> zones = new IdentityHashMap<>();
    private final Map<WiringView, Shapes.Shape> kept = new IdentityHashMap<>();
    private final Shapes shapes;
    private final Map<Quantity, Double> figures = new IdentityHashMap<>();

    Bundles(Shapes shapes) {
        this.shapes = shapes;
    }

    /** The shape of a drawing or harness. */
    Shapes.Shape shape(WiringView view) {
        return kept.computeIfAbsent(view, shapes::of);
    }

    /** The zone of a place; empty when it states no ambient temperature. */
    Optional<Platform.Zone> zone(WiringView view, String place) {
        return zones.computeIfAbsent(view.platform(), key -> new HashMap<>()).computeIfAbsent(place,
                key -> view.platform().zoneOf(key).filter(each -> each.ambient()
                        .filter(ambient -> ambient.unit().dimension() == Dimension.TEMPERATURE).isPresent()));
    }

    /** A figure in SI units. */
    double si(Quantity figure) {
        return figures.computeIfAbsent(figure, Quantity::si);
    }

    /** The place of a name on the way of a wire: its own, or the one that the branch of this name goes to. */
    Optional<String> place(WiringView view, String name) {
        return places.computeIfAbsent(view.name(), key -> new HashMap<>()).computeIfAbsent(name,
                key -> view.platform().place(name).isPresent() ? Optional.of(name)
                        : view.run(name).flatMap(Run::to).map(Ref::text));
    }

    /** In which vehicles a wire runs through a stretch; empty when it never does. */
    Optional<Condition> at(Section section, WireView wire) {
        return Optional.ofNullable(there.computeIfAbsent(section, key -> {
            Map<WireView, Condition> when = new IdentityHashMap<>();
            section.wires().forEach(each -> when.merge(each.wire(), each.when(), Condition::or));
            return when;
        }).get(wire));
    }

    /** The wires in a stretch for some vehicles. */
    Bundle of(Section section, Condition here) {
        return known.computeIfAbsent(section, key -> new HashMap<>()).computeIfAbsent(here, key -> {
            List<Condition> wires = section.wires().stream().map(each -> each.when().and(here)).toList();
            return new Bundle(section.label(), here, wires.stream().filter(each -> !each.isNever()).toList());
        });
    }
}
