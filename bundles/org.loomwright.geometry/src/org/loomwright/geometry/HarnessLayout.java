// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;

/**
 * A harness with its wires laid along its tree: what every list of the bench and every comparison of lengths
 * begins with.
 *
 * @param view  the harness
 * @param parts catalogue parts by name
 * @param tree  its shape
 * @param wires its wires with their lengths, in source order
 */
public record HarnessLayout(WiringView view, Map<String, Part> parts, HarnessTree tree, List<LaidWire> wires) {

    /**
     * A wire and its lengths.
     *
     * @param wire    the wire
     * @param lengths by vehicles; no two for one vehicle
     * @param unknown the vehicles that have the wire but in which its way is not known
     */
    public record LaidWire(WireView wire, List<CutLength> lengths, Condition unknown) {
    }

    /** Lays a harness out. Linear in its wires and their routes, but for conditions. */
    public static HarnessLayout of(WiringView view, Map<String, Part> parts) {
        HarnessTree tree = HarnessTree.of(view);
        CutLengths lengths = new CutLengths(tree, parts, CutSettings.usual());
        List<LaidWire> wires = new ArrayList<>();
        for (RoutedWire routed : RoutedWire.all(tree, NodeSpots.of(tree))) {
            List<CutLength> cut = lengths.of(routed);
            Condition unknown = routed.wire().when();
            for (CutLength each : cut) {
                unknown = unknown.minus(each.when());
            }
            wires.add(new LaidWire(routed.wire(), cut, unknown));
        }
        return new HarnessLayout(view, parts, tree, List.copyOf(wires));
    }
}
