// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Supply;

/**
 * What is assumed behind open cavities, as pieces: a contact from each to the pole of a battery of the vehicle or, in
 * vehicles without one, to that of a supply that is assumed; or a contact to ground.
 */
final class AssumedPieces {

    private static final String BASIS = "common practice";
    private static final Junction POLE = new Junction.Tip("", "the supply that is assumed", true);

    private final SchematicBuilder builder;
    private final Connections connections;
    private final double scale;

    AssumedPieces(SchematicBuilder builder, Connections connections, double nominal) {
        this.builder = builder;
        this.connections = connections;
        this.scale = nominal / 12;
    }

    void add(List<Boundary> boundaries, Junction reference) {
        Condition assumed = connections.fitment().platform().vehicles().none();
        for (Boundary each : boundaries) {
            Subject subject = builder.spot(each.point(), "what is assumed behind ");
            Junction at = Junction.at(each.point());
            if (each.kind() == Boundary.Kind.GROUND) {
                builder.add(at, reference, each.when(), Role.CONTACT, subject, Gate.ALWAYS,
                        new Model.Fixed(Usual.CONTACT), 0, BASIS);
            } else if (each.kind() == Boundary.Kind.FEED) {
                assumed = assumed.or(feed(each, at, subject));
            }
        }
        if (!assumed.isNever()) {
            String platform = connections.fitment().platform().name();
            Subject subject = new Subject(platform, "", "supply that is assumed", connections.fitment().platform()
                    .platform().name().span(), Optional.empty(), Optional.empty(), Optional.empty());
            builder.add(POLE, reference, assumed, Role.BATTERY, subject, Gate.ALWAYS, new Model.Accumulator(
                    Usual.ASSUMED_VOLTS * scale, Usual.ASSUMED_OHMS * scale), 0, BASIS);
            builder.add(POLE, reference, assumed, Role.MACHINE, subject, Gate.ALWAYS, new Model.Charging(
                    Usual.REGULATED * scale, Usual.ASSUMED_AMPS, Usual.ALTERNATOR_IDLE), Usual.ASSUMED_AMPS, BASIS);
        }
    }

    /** Joins a cavity to a source; returns the vehicles that have no battery of their own. */
    private Condition feed(Boundary boundary, Junction at, Subject subject) {
        Condition rest = boundary.when();
        for (Supply supply : connections.supplies()) {
            if (DevicePieces.isBattery(supply) && !supply.live().isEmpty()) {
                Point pole = supply.live().getFirst();
                builder.add(at, Junction.at(pole), rest.and(supply.when()), Role.CONTACT, subject, new Gate.Keyed(),
                        new Model.Fixed(Usual.ASSUMED_OHMS * scale), 0, BASIS);
                rest = rest.minus(supply.when());
            }
        }
        builder.add(at, POLE, rest, Role.CONTACT, subject, new Gate.Keyed(), new Model.Fixed(Usual.CONTACT), 0, BASIS);
        return rest;
    }
}
