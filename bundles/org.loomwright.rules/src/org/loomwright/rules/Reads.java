// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;

/** A note of what rules asked about a project besides their target. Safe for use by several threads. */
final class Reads {

    private final Map<String, Optional<WiringView>> wirings = new ConcurrentHashMap<>();
    private volatile boolean everything;

    /** Notes that the project as a whole was asked for. */
    void everything() {
        everything = true;
    }

    /** Notes that a drawing or harness was asked for, and what was found under that name. */
    void wiring(String name, Optional<WiringView> found) {
        wirings.putIfAbsent(name, found);
    }

    /** Returns whether the project as a whole was asked for. */
    boolean isEverything() {
        return everything;
    }

    /** Returns the names of the drawings and harnesses that were asked for, in order. */
    List<String> names() {
        return wirings.keySet().stream().sorted().toList();
    }

    /** Returns whether another project gives the same answers, so that what was found still holds there. */
    boolean hold(Project project) {
        return !everything && wirings.entrySet().stream()
                .allMatch(each -> project.wirings().get(each.getKey()) == each.getValue().orElse(null));
    }
}
