// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.coverage;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Target;

/** Sorts the drawings of a platform by the position that they fill. */
final class Positions {

    private Positions() {
    }

    /** The drawings by name of position, in source order; those that name no position are left out. */
    static Map<String, List<WiringView>> drawings(Target.OfPlatform target) {
        Map<String, List<WiringView>> drawings = new LinkedHashMap<>();
        for (WiringView view : target.wirings()) {
            if (!view.wiring().isHarness()) {
                view.wiring().position().filter(ref -> !ref.text().isEmpty()).ifPresent(
                        ref -> drawings.computeIfAbsent(ref.text(), key -> new ArrayList<>()).add(view));
            }
        }
        return drawings;
    }
}
