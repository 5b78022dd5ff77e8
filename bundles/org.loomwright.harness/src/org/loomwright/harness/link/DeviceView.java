// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Device;
import org.loomwright.harness.Part;

/**
 * A device with its catalogue part.
 *
 * @param owner  name of the platform, drawing or harness that declares it
 * @param device the snapshot
 * @param when   the vehicles that have it
 * @param parts  what it is, by vehicles
 */
public record DeviceView(String owner, Device device, Condition when, List<Case<Part>> parts) {

    /** The device's name. */
    public String name() {
        return device.name().text();
    }

    /** The spot of one of its pins. */
    public Node pin(String pin) {
        return new Node(Node.Kind.PIN, owner, name(), pin);
    }
}
