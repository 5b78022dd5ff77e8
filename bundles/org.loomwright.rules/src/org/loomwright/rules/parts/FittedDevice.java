// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.connection.Point;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.DeviceView;

/**
 * A device of a choice of harnesses, as one part that it is.
 *
 * @param view the device
 * @param part the part
 * @param when the vehicles in which it is that part
 */
record FittedDevice(DeviceView view, Part part, Condition when) {

    /** All devices of a choice of harnesses, those of the platform first. */
    static List<FittedDevice> of(Fitment fitment) {
        List<FittedDevice> devices = new ArrayList<>();
        fitment.platform().devices().values().forEach(device -> add(device, fitment.domain(), devices));
        for (Fitment.Fitted fitted : fitment.fitted().values()) {
            fitted.view().devices().values().forEach(device -> add(device, fitted.when(), devices));
        }
        return devices;
    }

    private static void add(DeviceView device, Condition within, List<FittedDevice> devices) {
        for (Case<Part> each : device.parts()) {
            Condition when = each.when().and(device.when()).and(within);
            if (!when.isNever()) {
                devices.add(new FittedDevice(device, each.value(), when));
            }
        }
    }

    String name() {
        return view.name();
    }

    Point pin(String pin) {
        return new Point.Spot(view.pin(pin));
    }
}
