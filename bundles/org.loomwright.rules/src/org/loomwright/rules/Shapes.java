// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.lang.ref.SoftReference;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
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
 * The shapes of the drawings and harnesses of one check, and how our harnesses fit. A shape is worked out when a rule
 * first asks for it, and again only where there was no room to keep it; what lies together in each stretch only when a
 * rule asks for that. Safe for use by several threads.
 */
public final class Shapes {

    private record Fit(FitReport report, List<WiringView> inputs) {
    }

    /** A shape that may be given up when room is short; it is then worked out again. */
    private record Kept(WiringView view, SoftReference<Shape> shape) {
    }

    private final Project project;
    private final Cancel cancel;
    private final Map<String, Kept> shapes;
    private final Map<String, Fit> fits;
    private final PackingCache packings;
    private final Reads reads;

    private Shapes(Project project, Cancel cancel, Map<String, Kept> shapes, Map<String, Fit> fits,
            PackingCache packings, Reads reads) {
        this.project = project;
        this.cancel = cancel;
        this.shapes = shapes;
        this.fits = fits;
        this.packings = packings;
        this.reads = reads;
    }

    /** Shapes of a project of which nothing is known yet. */
    Shapes(Project project, Cancel cancel) {
        this(project, cancel, new ConcurrentHashMap<>(), new ConcurrentHashMap<>(), new PackingCache(), new Reads());
    }

    /** The shapes of another project, with what is known here of the drawings and harnesses that are the same there. */
    Shapes of(Project next, Cancel nextCancel) {
        Map<String, Kept> same = new ConcurrentHashMap<>();
        shapes.forEach((name, kept) -> {
            if (next.wirings().get(name) == kept.view()) {
                same.put(name, kept);
            }
        });
        Map<String, Fit> sameFits = new ConcurrentHashMap<>();
        fits.forEach((name, fit) -> {
            if (Identity.same(fit.inputs, inputs(next, fit.inputs.getFirst()))) {
                sameFits.put(name, fit);
            }
        });
        return new Shapes(next, nextCancel, same, sameFits, packings, new Reads());
    }

    /** The same shapes, with a note of what is asked of them. */
    Shapes noting(Reads notes) {
        return new Shapes(project, cancel, shapes, fits, packings, notes);
    }

    /**
     * Returns the project that is checked. What asks for it is asked again after every
     * change; see {@link #wiring} and {@link #harnesses}.
     */
    public Project project() {
        reads.everything();
        return project;
    }

    /** The same for the engine, which depends on nothing. */
    Project checked() {
        return project;
    }

    /** Returns the drawing or harness of that name. */
    public Optional<WiringView> wiring(String name) {
        Optional<WiringView> found = project.wiring(name);
        reads.wiring(name, found);
        return found;
    }

    /** Returns the harnesses of ours. */
    public List<WiringView> harnesses() {
        List<WiringView> harnesses = project.harnesses();
        harnesses.forEach(each -> reads.wiring(each.name(), Optional.of(each)));
        return harnesses;
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
    public FitReport fit(WiringView harness) {
        wiring(harness.name());
        harness.covers().forEach(this::wiring);
        return fits.computeIfAbsent(harness.name(), name -> new Fit(
                new ChainJudge().judge(FitProblem.of(harness, project, FitDefaults.usual()), cancel),
                inputs(project, harness))).report();
    }

    /** What the fit of a harness depends on: it, and what it covers. */
    private static List<WiringView> inputs(Project project, WiringView harness) {
        List<WiringView> inputs = new ArrayList<>();
        inputs.add(project.wirings().get(harness.name()));
        harness.covers().forEach(name -> inputs.add(project.wirings().get(name)));
        return inputs;
    }

    /** Returns the shape of a drawing or harness. */
    public Shape of(WiringView view) {
        wiring(view.name());
        Shape[] made = new Shape[1];
        shapes.compute(view.name(), (name, kept) -> {
            made[0] = kept == null ? null : kept.shape().get();
            if (made[0] != null) {
                return kept;
            }
            made[0] = new Shape(view);
            return new Kept(view, new SoftReference<>(made[0]));
        });
        return made[0];
    }

    /** The shape of one drawing or harness. */
    public static final class Shape {
        private final HarnessTree tree;
        private final NodeSpots spots;
        private List<RoutedWire> wires;
        private Map<WireView, RoutedWire> byWire;
        private List<Section> all;
        private Map<WireView, List<Section>> sections;

        private Shape(WiringView view) {
            tree = HarnessTree.of(view);
            spots = NodeSpots.of(tree);
        }

        private List<RoutedWire> wires() {
            if (wires == null) {
                Map<WireView, RoutedWire> laid = new IdentityHashMap<>();
                wires = RoutedWire.all(tree, spots);
                wires.forEach(wire -> laid.put(wire.wire(), wire));
                byWire = laid;
            }
            return wires;
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
        public synchronized RoutedWire route(WireView wire) {
            wires();
            return byWire.get(wire);
        }

        /** Returns all its stretches, run by run in source order, with all that lies in them in some vehicle. */
        public synchronized List<Section> sections() {
            if (all == null) {
                all = new Bundles().of(tree, wires(), tree.vehicles()).sections();
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
