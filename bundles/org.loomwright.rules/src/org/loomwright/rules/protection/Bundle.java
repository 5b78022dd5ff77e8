// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.rules.Counting;

/** The wires that lie together in a stretch of a harness, for some vehicles. For one thread. */
final class Bundle {

    private final String words;
    private final Condition here;
    private final List<Condition> wires;
    private final Map<Integer, Condition> counted = new HashMap<>();

    /**
     * @param words what the stretch is called
     * @param here  the vehicles in question
     * @param wires for each wire in it, in which of these vehicles it is there
     */
    Bundle(String words, Condition here, List<Condition> wires) {
        this.words = words;
        this.here = here;
        this.wires = List.copyOf(wires);
    }

    String words() {
        return words;
    }

    List<Condition> wires() {
        return wires;
    }

    /** In which of the vehicles in question at least so many wires lie together. */
    Condition atLeast(int count) {
        return counted.computeIfAbsent(count, key -> Counting.atLeast(key, wires, here));
    }
}
