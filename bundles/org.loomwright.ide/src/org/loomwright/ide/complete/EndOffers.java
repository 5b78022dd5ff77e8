// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.complete.Proposal.Kind;

/** Where a wire can end, and what a connector can plug into. */
final class EndOffers {

    private EndOffers() {
    }

    /** Connectors with a free cavity, splices, studs and devices within reach, for the vehicles of the wire. */
    static void ends(Asked asked, Offers offers) {
        asked.wiring().ifPresent(view -> {
            Optional<Condition> vehicles = asked.vehicles();
            Optional<WireView> own = asked.wire();
            view.splices().values().stream().filter(splice -> asked.meets(splice.when()))
                    .forEach(splice -> offers.add(Kind.SPLICE, splice.splice().name().text(), "splice of circuit "
                            + splice.circuit().name(), "", splice.circuit().name().text()
                                    .equals(asked.around().circuit()) ? 0 : 4));
            view.connectors().values().stream().filter(connector -> asked.meets(connector.when()))
                    .forEach(connector -> connector(view, connector, vehicles, own, offers));
            view.studs().values().stream().filter(stud -> asked.meets(stud.when()))
                    .forEach(stud -> offers.add(Kind.STUD, stud.stud().name().text(), "stud"
                            + stud.stud().ground().map(ground -> " on " + ground).orElse(""), "", 2));
            view.devices().values().stream().filter(device -> asked.meets(device.when()))
                    .forEach(device -> device(device, 2, offers));
            Set<String> reached = PlaceOffers.reached(view).keySet();
            view.platform().devices().values().stream().filter(device -> asked.meets(device.when()))
                    .filter(device -> reached.isEmpty() || device.device().place()
                            .map(place -> reached.contains(place.text())).orElse(true))
                    .forEach(device -> device(device, 3, offers));
        });
    }

    private static void connector(WiringView view, ConnectorView connector, Optional<Condition> vehicles,
            Optional<WireView> own, Offers offers) {
        Set<String> all = Cavities.of(connector).keySet();
        long free = all.stream().filter(cavity -> Cavities.isFree(view, connector, cavity, vehicles, own)).count();
        if (free > 0 || all.isEmpty()) {
            String room = all.isEmpty() ? "housing not known" : free + " of " + all.size()
                    + (all.size() == 1 ? " cavity free" : " cavities free");
            offers.add(Kind.CONNECTOR, connector.name(), connector.connector().title(), room, 1);
        }
    }

    private static void device(DeviceView device, int rank, Offers offers) {
        String part = device.parts().stream().findFirst().map(each -> each.value().kind().word()).orElse("device");
        offers.add(Kind.DEVICE, device.name(), device.device().title().isEmpty() ? part : device.device().title(),
                part, rank);
    }

    /** Devices that nothing of this drawing plugs into yet, at the same place first; with {@code of}: connectors. */
    static void mates(Asked asked, Offers offers) {
        asked.wiring().ifPresent(view -> {
            Set<String> taken = new HashSet<>();
            view.connectors().values().stream().filter(each -> !each.name().equals(asked.around().connector()))
                    .forEach(each -> each.mates().forEach(mate -> taken.add(mate.value().element())));
            Optional<String> place = place(asked, view);
            view.platform().devices().values().stream().filter(device -> asked.meets(device.when()))
                    .filter(device -> !taken.contains(device.name()))
                    .forEach(device -> device(device, device.device().place()
                            .filter(at -> place.filter(at.text()::equals).isPresent()).isPresent() ? 0 : 2, offers));
            view.devices().values().forEach(device -> device(device, 3, offers));
            view.connectors().values().stream().filter(each -> !each.name().equals(asked.around().connector()))
                    .forEach(each -> offers.add(Kind.CONNECTOR, each.name(), each.connector().title(), "", 3));
            asked.moment().project().wirings().values().stream().filter(other -> other != view
                            && other.platform().name().equals(view.platform().name()) && asked.meets(other.when()))
                    .forEach(other -> other.connectors().values().stream().filter(each -> asked.meets(each.when()))
                            .forEach(each -> offers.add(Kind.CONNECTOR, each.name() + " of " + other.name(),
                                    each.connector().title(), "", mating(each, place, other) ? 1 : 4)));
        });
    }

    /** The place of the connector that is being written. */
    private static Optional<String> place(Asked asked, WiringView view) {
        String at = asked.textBefore("Connector.place");
        String on = asked.textBefore("Connector.branch");
        return !at.isEmpty() ? Optional.of(at) : view.run(on).flatMap(org.loomwright.harness.Run::to)
                .map(org.loomwright.harness.Ref::text)
                .or(() -> Optional.ofNullable(view.connectors().get(asked.around().connector()))
                        .flatMap(own -> PlaceOffers.of(view, own.connector().place(), own.connector().branch())));
    }

    private static boolean mating(ConnectorView other, Optional<String> place, WiringView of) {
        return place.isPresent() && place.equals(PlaceOffers.of(of, other.connector().place(),
                other.connector().branch()));
    }
}
