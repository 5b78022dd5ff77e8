// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.harness.Element;
import org.loomwright.lang.services.LoomGrammarAccess;
import org.loomwright.lang.text.Problems;
import org.loomwright.model.loom.Catalogue;
import org.loomwright.model.loom.Kit;
import org.loomwright.model.loom.LoomFile;
import org.loomwright.model.loom.Platform;
import org.loomwright.model.loom.Practice;
import org.loomwright.model.loom.TopElement;
import org.loomwright.model.loom.Waiver;
import org.loomwright.model.loom.Wiring;

/**
 * Builds the elements of one file from its tree. Stateless; may be shared by threads, as long as each tree is used by
 * one. O(nodes of the tree).
 */
public final class SnapshotBuilder {
    private final Features features;

    /** Takes the grammar that all trees are made by. */
    public SnapshotBuilder(LoomGrammarAccess grammar) {
        features = new Features(grammar);
    }

    /**
     * What a tree says.
     *
     * @param elements in source order
     * @param units    which units they use; it has still to {@linkplain Units#report report} numbers without one
     */
    public record Built(List<Element> elements, Units units) {
    }

    /** Returns the elements in source order; what cannot be used is reported and left out. */
    public Built build(LoomFile source, Problems problems) {
        FileText file = new FileText(problems.lines(), problems, features);
        Quantities quantities = new Quantities(file);
        List<Element> elements = new ArrayList<>(source.getElements().size());
        for (TopElement element : source.getElements()) {
            switch (element) {
                case Platform each -> elements.add(new PlatformBuilder(file, quantities).build(each));
                case Catalogue each -> elements.add(new CatalogueBuilder(file, quantities).build(each));
                case Wiring each -> elements.add(new WiringBuilder(file, quantities).build(each));
                case Kit each -> elements.add(new KitBuilder(file, quantities).build(each));
                case Waiver each -> elements.add(new KitBuilder(file, quantities).build(each));
                case Practice each -> elements.add(new PracticeBuilder(file, quantities).build(each));
                default -> { }
            }
        }
        return new Built(List.copyOf(elements), quantities.units());
    }
}
