// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.mode;

import java.util.Map;
import org.loomwright.harness.Span;

/**
 * One set of switch positions and engine state, with all that it takes over from others.
 *
 * @param name    its name
 * @param title   words for people
 * @param engine  what the engine does
 * @param flat    true when the battery is flat
 * @param states  the state of each device that is set, by name; the others are at rest
 * @param written true when the platform writes it, false for one of the usual ones
 * @param place   where it is written
 */
public record Mode(String name, String title, Engine engine, boolean flat, Map<String, String> states, boolean written,
        Span place) {

    public Mode {
        states = Map.copyOf(states);
    }

    /** Returns the state of a device whose first state is the one at rest. */
    public String state(String device, String rest) {
        return states.getOrDefault(device, rest);
    }

    /** Returns whether the key is on: in all modes but {@code keyOff} and those in which the engine only turns on. */
    public boolean isKeyed() {
        return engine != Engine.TURNING && !name.equals("keyOff");
    }

    /** Returns its title, or its name where it has none. */
    public String words() {
        return title.isEmpty() ? name : title;
    }
}
