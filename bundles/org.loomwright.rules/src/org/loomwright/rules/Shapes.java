// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitProblem;
import org.loomwright.fit.FitReport;
import org.loomwright.geometry.Bundles;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.NodeSpots;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.geometry.Section;
import org.loomwright.geometry.packing.PackingCache;
import org.loomwright.harness.Part;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;

/**
 * The shapes of the drawings and harnesses of one check, and how our harnesses fit. Each is worked out once, when a
 * rule first asks for it; what lies together in each stretch only when a rule asks for that. Safe for use by several
 * threads.
 */
public final class Shapes {

    private final Project project;
    private final Cancel cancel;
    private final Map<String, Shape> shapes = new HashMap<>();
    private final Map<String, FitReport> fits = new HashMap<>();
    private final PackingCache packings = new PackingCache();

    Shapes(Project project, Cancel cancel) {
        this.project = project;
        this.cancel = cancel;
    }

    /** Returns the project that is checked. */
    public Project project() {
        return project;
    }

    /** Returns what remembers the packings of bundles. */
    public PackingCache packings() {
        return packings;
    }

    /** Returns the catalogue part that a reference names; empty when there is none. */
    public Optional<Part> part(Ref ref) {
        return Optional.ofNullable(project.parts().get(ref.text()));
    }

    /** Returns how a harness of ours fits the drawings that it covers, with the usual defaults. */
    public synchronized FitReport fit(WiringView harness) {
        return fits.computeIfAbsent(harness.name(),
                name -> new ChainJudge().judge(FitProblem.of(harness, project, FitDefaults.usual()), cancel));
    }

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
        private List<Section> all;
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

        /** Returns where its connectors, splices, studs and devices sit. */
        public NodeSpots spots() {
            return spots;
        }

        /** Returns the way of a wire of it. */
        public RoutedWire route(WireView wire) {
            return byWire.get(wire);
        }

        /** Returns all its stretches, run by run in source order, with all that lies in them in some vehicle. */
        public synchronized List<Section> sections() {
            if (all == null) {
                all = new Bundles().of(tree, wires, tree.vehicles()).sections();
            }
            return all;
        }

        /** Returns the stretches that a wire of it runs through, with all that lies in them. */
        public synchronized List<Section> sections(WireView wire) {
            if (sections == null) {
                sections = new IdentityHashMap<>();
                for (Section section : sections()) {
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
