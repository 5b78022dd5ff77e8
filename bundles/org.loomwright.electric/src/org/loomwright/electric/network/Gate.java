// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import java.util.Set;

/** When a piece conducts. */
public sealed interface Gate {

    /** Always. */
    record Open() implements Gate {
    }

    /**
     * While a device is in one of some states.
     *
     * @param device name of the device
     * @param owner  name of what declares it
     * @param rest   its state at rest
     * @param states the states
     * @param relay  true when a coil decides, not a mode
     */
    record While(String owner, String device, String rest, Set<String> states, boolean relay) implements Gate {
        public While {
            states = Set.copyOf(states);
        }
    }

    /** While the engine is cranked. */
    record Cranking() implements Gate {
    }

    /** While machines turn, or while they stand. */
    record Turning(boolean turning) implements Gate {
    }

    /** While the key is on: in every mode but {@code keyOff} and those in which the engine only turns on. */
    record Keyed() implements Gate {
    }

    /** The gate that is always open. */
    Gate ALWAYS = new Open();
}
