// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.electric.mode.Engine;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.complete.Proposal.Kind;
import org.loomwright.lang.words.Slot;

/** Cavities, pins and states: of an end those that are free. */
final class CavityOffers {

    private CavityOffers() {
    }

    static void add(Slot slot, Asked asked, Offers offers) {
        switch (slot.property()) {
            case "End.cavity" -> end(asked, offers);
            case "CavityFact.cavity" -> asked.wiring()
                    .map(view -> view.connectors().get(asked.around().connector()))
                    .ifPresent(connector -> cavities(asked, connector, offers));
            case "CavityFact.mate" -> asked.wiring().map(view -> view.connectors().get(asked.around().connector()))
                    .ifPresent(connector -> mate(asked, connector, offers));
            case "Join.from", "Join.to", "PinRange.upTo" -> asked.moment().part(asked.around().part())
                    .ifPresent(part -> pins(part, offers));
            case "Join.states" -> asked.moment().part(asked.around().part()).ifPresent(part -> states(part, offers));
            case "ModeSetting.state" -> set(asked, asked.textBefore("ModeSetting.subject"), offers);
            default -> { }
        }
    }

    /** The states of a device, or of the engine. */
    private static void set(Asked asked, String subject, Offers offers) {
        asked.platform().map(view -> view.devices().get(subject))
                .ifPresent(device -> device.parts().forEach(each -> states(each.value(), offers)));
        if (subject.equals("engine")) {
            Arrays.stream(Engine.values()).forEach(each -> offers.add(Kind.OTHER, each.word(), "state of the engine",
                    "", each.ordinal()));
        }
    }

    private static void end(Asked asked, Offers offers) {
        String target = asked.textBefore("End.target");
        if (asked.wiring().isEmpty()) {
            return;
        }
        WiringView view = asked.wiring().get();
        ConnectorView connector = view.connectors().get(target);
        if (connector != null) {
            Optional<WireView> own = asked.wire();
            Cavities.of(connector).forEach((cavity, title) -> {
                if (Cavities.isFree(view, connector, cavity, asked.vehicles(), own)) {
                    offers.add(Kind.CAVITY, cavity, title.isEmpty() ? "free" : title, "", 0);
                }
            });
            return;
        }
        DeviceView device = Optional.ofNullable(view.devices().get(target))
                .orElse(view.platform().devices().get(target));
        if (device != null) {
            device.parts().forEach(each -> pins(each.value(), offers));
        }
    }

    /** All cavities of a connector with the wires in them. */
    private static void cavities(Asked asked, ConnectorView connector, Offers offers) {
        WiringView view = asked.wiring().orElseThrow();
        Cavities.of(connector).forEach((cavity, title) -> {
            List<String> wires = Cavities.in(view, connector.cavity(cavity), Optional.empty(), Optional.empty())
                    .stream().map(WireView::label).toList();
            offers.add(Kind.CAVITY, cavity, wires.isEmpty() ? title : "wire " + String.join(", ", wires), title,
                    wires.isEmpty() ? 1 : 0);
        });
    }

    private static void mate(Asked asked, ConnectorView connector, Offers offers) {
        connector.mates().forEach(mate -> {
            Stream<Part> parts = mate.value().device()
                    ? Stream.concat(asked.platform().stream().map(view -> view.devices().get(mate.value().element())),
                            asked.wiring().stream().map(view -> view.devices().get(mate.value().element())))
                            .filter(java.util.Objects::nonNull).flatMap(device -> device.parts().stream())
                            .map(each -> each.value())
                    : asked.moment().project().wiring(mate.value().owner()).stream()
                            .map(view -> view.connectors().get(mate.value().element()))
                            .filter(java.util.Objects::nonNull).flatMap(other -> other.housings().stream())
                            .map(each -> each.value());
            parts.forEach(part -> pins(part, offers));
        });
    }

    private static void pins(Part part, Offers offers) {
        part.pins().forEach(pin -> offers.add(Kind.CAVITY, pin.name().text(), pin.title(), "", 0));
    }

    private static void states(Part part, Offers offers) {
        part.states().forEach(state -> offers.add(Kind.OTHER, state.text(), "state of " + part.name(), "", 0));
    }
}
