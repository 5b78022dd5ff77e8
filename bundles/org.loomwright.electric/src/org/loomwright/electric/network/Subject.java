// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import java.util.Optional;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.WireView;

/**
 * What a piece is, for people and for findings.
 *
 * @param owner   name of the platform, drawing or harness that declares it
 * @param element its name there, as a waiver names it
 * @param label   words for people: {@code wire 12b}, {@code Left headlamp, 1 to 3}
 * @param place   where it is written
 * @param wire    the wire; empty for all else
 * @param device  the device; empty for wires and contacts of connectors
 * @param part    its part; empty where it has none
 */
public record Subject(String owner, String element, String label, Span place, Optional<WireView> wire,
        Optional<DeviceView> device, Optional<Part> part) {
}
