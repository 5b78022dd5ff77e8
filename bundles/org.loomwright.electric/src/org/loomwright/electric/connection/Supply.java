// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.DeviceView;

/**
 * A source of current.
 *
 * @param device  the device
 * @param part    the part that it is
 * @param when    the vehicles in which it is that part
 * @param live    its pins of the insulated pole
 * @param returns its other pins
 */
public record Supply(DeviceView device, Part part, Condition when, List<Point> live, List<Point> returns) {

    /**
     * Returns the sort of source: {@code battery}, {@code alternator}, {@code generator}; empty when it is not stated.
     */
    public String type() {
        return part.word(Part.WordKind.TYPE).orElse("");
    }
}
