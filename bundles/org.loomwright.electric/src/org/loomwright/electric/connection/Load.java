// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.DeviceView;

/**
 * A device that turns current into something else: lamp, motor, coil of a relay.
 *
 * @param device   the device
 * @param part     the part that it is
 * @param when     the vehicles in which it is that part
 * @param pins     the pins that its current enters and leaves by
 * @param feed     the pin that must see the insulated pole, where the part says so
 * @param grounded true when its case returns the current to a ground node that conducts
 */
public record Load(DeviceView device, Part part, Condition when, List<Point> pins, Optional<Point> feed,
        boolean grounded) {
}
