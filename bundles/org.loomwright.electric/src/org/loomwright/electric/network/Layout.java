// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.geometry.Bundles;
import org.loomwright.geometry.CutLength;
import org.loomwright.geometry.CutLengths;
import org.loomwright.geometry.CutSettings;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.NodeSpots;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.geometry.Section;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;

/** How the wires of a drawing or harness lie: their lengths, and what lies beside them. Safe for several threads. */
public final class Layout {

    private final HarnessTree tree;
    private final List<RoutedWire> wires;
    private final Map<WireView, RoutedWire> byWire = new IdentityHashMap<>();
    private final CutLengths lengths;
    private Map<WireView, List<Section>> sections;

    private Layout(WiringView view, Map<String, Part> parts) {
        tree = HarnessTree.of(view);
        wires = RoutedWire.all(tree, NodeSpots.of(tree));
        wires.forEach(each -> byWire.put(each.wire(), each));
        lengths = new CutLengths(tree, parts, CutSettings.usual());
    }

    /** Lays out one drawing or harness. */
    public static Layout of(WiringView view, Map<String, Part> parts) {
        return new Layout(view, parts);
    }

    /** Returns the lengths of a wire, by vehicles. */
    public List<CutLength> lengths(WireView wire) {
        RoutedWire routed = byWire.get(wire);
        return routed == null ? List.of() : lengths.of(routed);
    }

    /** Returns the way of a wire. */
    public RoutedWire route(WireView wire) {
        return byWire.get(wire);
    }

    /** Returns the stretches that a wire runs through, with all that lies in them in some vehicle. */
    public synchronized List<Section> sections(WireView wire) {
        if (sections == null) {
            sections = new IdentityHashMap<>();
            for (Section section : new Bundles().of(tree, wires, tree.vehicles()).sections()) {
                section.wires().forEach(each -> sections.computeIfAbsent(each.wire(),
                        key -> new java.util.ArrayList<>()).add(section));
            }
        }
        return sections.getOrDefault(wire, List.of());
    }
}
