// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.enumeration;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Element;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Source;
import org.loomwright.harness.Wiring;

/**
 * Connectors of one vehicle whose other half it has not. In the project of that vehicle alone the other half is not
 * even a name, so that the mistake is one of the text there and not the finding that it is among all vehicles.
 */
final class Unmated {

    private Unmated() {
    }

    static Set<String> in(List<Source> sources) {
        List<Element> elements = sources.stream().flatMap(source -> source.elements().stream()).toList();
        Set<String> there = new HashSet<>();
        for (Element element : elements) {
            if (element instanceof Platform platform) {
                platform.devices().forEach(each -> there.add(each.name().text()));
            } else if (element instanceof Wiring wiring) {
                wiring.connectors().forEach(each -> there.add(wiring.name() + ":" + each.name()));
            }
        }
        Set<String> keys = new HashSet<>();
        for (Element element : elements) {
            if (element instanceof Wiring wiring) {
                for (Connector connector : wiring.connectors()) {
                    for (Fact<Ref> mate : connector.mates()) {
                        String half = mate.value().owner().isEmpty() ? mate.value().text()
                                : mate.value().owner() + ":" + mate.value().text();
                        if (!there.contains(half)) {
                            keys.add("mate-does-not-match on " + wiring.name() + ":" + connector.name() + " as ERROR");
                        }
                    }
                }
            }
        }
        return keys;
    }
}
