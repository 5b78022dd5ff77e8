// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Optional;
import org.loomwright.harness.Part;
import org.loomwright.quantity.ConductorSize;

/** The diameters of the cables of one harness, each looked up once: a harness has few sorts of wire. For one thread. */
final class Diameters {

    private final Map<Part, Map<ConductorSize, OutsideDiameter>> known = new IdentityHashMap<>();

    /** See {@link OutsideDiameter#of}. */
    OutsideDiameter of(Optional<Part> cable, ConductorSize size) {
        return cable.isEmpty() ? OutsideDiameter.of(cable, size)
                : known.computeIfAbsent(cable.get(), part -> new HashMap<>())
                        .computeIfAbsent(size, each -> OutsideDiameter.of(cable, each));
    }
}
