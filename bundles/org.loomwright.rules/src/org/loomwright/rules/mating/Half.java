// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.mating;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Target;

/**
 * The half of a connection that a connector names as its mate.
 *
 * @param words     what it is, for people: {@code connector J7 of dash64}
 * @param name      where its name is declared
 * @param when      the vehicles that have it
 * @param parts     what it is, by vehicles
 * @param connector the same as a connector; empty for a device
 */
record Half(String words, Name name, Condition when, List<Case<Part>> parts, Optional<ConnectorView> connector) {

    /** The mates of a platform's connectors. */
    static final class Known {
        private final Target.OfPlatform target;
        private final Map<String, WiringView> wirings = new LinkedHashMap<>();

        Known(Target.OfPlatform target) {
            this.target = target;
            target.wirings().forEach(view -> wirings.put(view.name(), view));
        }

        /** What a mate names; empty for what another platform has. */
        Optional<Half> of(ConnectorView.Mate mate) {
            WiringView owner = wirings.get(mate.owner());
            if (!mate.device()) {
                return Optional.ofNullable(owner).map(view -> view.connectors().get(mate.element()))
                        .map(each -> new Half("connector " + each.name() + " of " + each.owner(),
                                each.connector().name(), each.when(), each.housings(), Optional.of(each)));
            }
            DeviceView device = owner == null ? target.platform().devices().get(mate.element())
                    : owner.devices().get(mate.element());
            return Optional.ofNullable(device).map(each -> new Half("device " + each.name(), each.device().name(),
                    each.when(), each.parts(), Optional.empty()));
        }
    }
}
