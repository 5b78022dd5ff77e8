// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.geometry.Bundles;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.NodeSpots;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.geometry.Section;
import org.loomwright.harness.Problem;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;

/**
 * The shapes of the drawings and harnesses of one check. Each is worked out once, when a rule first asks for it; what
 * lies together in each stretch only when a rule asks for that. Safe for use by several threads.
 */
public final class Shapes {

    private final Map<String, Shape> shapes = new HashMap<>();

    /** Returns the shape of a drawing or harness. */
    public synchronized Shape of(WiringView view) {
        return shapes.computeIfAbsent(view.name(), name -> new Shape(view));
    }

    /** The shape of one drawing or harness. */
    public static final class Shape {
        private final HarnessTree tree;
        private final NodeSpots spots;
        private final List<RoutedWire> wires;
        private final Map<WireView, RoutedWire> byWire = new IdentityHashMap<>();
        private Map<WireView, List<Section>> sections;

        private Shape(WiringView view) {
            tree = HarnessTree.of(view);
            spots = NodeSpots.of(tree);
            wires = RoutedWire.all(tree, spots);
            wires.forEach(wire -> byWire.put(wire.wire(), wire));
        }

        /** Returns its trunks and branches. */
        public HarnessTree tree() {
            return tree;
        }

        /** Returns the way of a wire of it. */
        public RoutedWire route(WireView wire) {
            return byWire.get(wire);
        }

        /** Returns the stretches that a wire of it runs through, with all that lies in them. */
        public synchronized List<Section> sections(WireView wire) {
            if (sections == null) {
                sections = new IdentityHashMap<>();
                for (Section section : new Bundles().of(tree, wires, tree.vehicles()).sections()) {
                    section.wires().forEach(each -> sections.computeIfAbsent(each.wire(), key -> new ArrayList<>())
                            .add(section));
                }
            }
            return sections.getOrDefault(wire, List.of());
        }

        /** Returns what is wrong with its trunks and branches. */
        public List<Problem> problems() {
            return tree.problems();
        }

        /** Returns what has no spot on it. */
        public List<Problem> unplaced() {
            return spots.problems();
        }
    }
}
