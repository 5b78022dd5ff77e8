// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Device;
import org.loomwright.harness.Element;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Source;
import org.loomwright.harness.Waiver;
import org.loomwright.harness.Wiring;

/** Collects the names that stand where a part can stand. Linear in the size of the sources. */
final class PartNames {

    private final Set<String> names = new TreeSet<>();
    private final Set<String> wirings = new HashSet<>();
    private final Set<String> contents = new TreeSet<>();

    private PartNames() {
    }

    /** The names that are used for parts. What a kit contains is a part unless a drawing or harness has its name. */
    static Set<String> usedBy(List<Source> sources) {
        PartNames found = new PartNames();
        sources.forEach(source -> source.elements().forEach(found::element));
        found.contents.removeAll(found.wirings);
        found.names.addAll(found.contents);
        found.names.remove("");
        return found.names;
    }

    private void element(Element element) {
        switch (element) {
            case Catalogue catalogue -> catalogue.parts().forEach(part -> add(part.base()));
            case Platform platform -> platform.devices().forEach(this::device);
            case Wiring wiring -> wiring(wiring);
            case Kit kit -> kit.contents().forEach(content -> contents.add(content.item().text()));
            case Waiver waiver -> { }
            case Practice practice -> { }
        }
    }

    private void wiring(Wiring wiring) {
        wirings.add(wiring.name().text());
        add(wiring.defaults().cable());
        wiring.devices().forEach(this::device);
        wiring.placed().forEach(placed -> names.add(placed.part().text()));
        for (Connector connector : wiring.connectors()) {
            add(connector.housing());
            connector.cavities().stream().filter(each -> each.kind() != Connector.CavityKind.MAP)
                    .forEach(each -> names.add(each.value().text()));
        }
        for (Circuit circuit : wiring.circuits()) {
            circuit.wires().forEach(wire -> add(wire.cables()));
            circuit.splices().forEach(splice -> add(splice.method()));
        }
    }

    private void device(Device device) {
        add(device.part());
    }

    private void add(Collection<Fact<Ref>> facts) {
        facts.forEach(fact -> names.add(fact.value().text()));
    }

    private void add(Optional<Ref> ref) {
        ref.ifPresent(each -> names.add(each.text()));
    }
}
