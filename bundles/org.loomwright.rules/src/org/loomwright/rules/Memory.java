// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;

/**
 * What an engine can use again from an earlier check. It decides how much is worked out, never what is found. A thing
 * is used again while it is the same object in the next project, so that project has to be made from the earlier one;
 * see {@link org.loomwright.harness.link.LinkedProject}. Immutable; safe for use by several threads.
 */
public final class Memory {

    private final RuleBook book;
    private final boolean every;
    private final List<String> names;
    private final Optional<Shapes> shapes;
    private final Map<String, Found> found;
    private final Map<String, Wired> wired;

    Memory(RuleBook book, boolean every, List<String> names, Optional<Shapes> shapes, Map<String, Found> found,
            Map<String, Wired> wired) {
        this.book = book;
        this.every = every;
        this.names = List.copyOf(names);
        this.shapes = shapes;
        this.found = Map.copyOf(found);
        this.wired = Map.copyOf(wired);
    }

    /** Returns a memory of nothing. */
    public static Memory none() {
        return new Memory(new RuleBook(List.of()), false, List.of(), Optional.empty(), Map.of(), Map.of());
    }

    /** Names and kinds of drawings and harnesses; when one comes or goes, everything is asked again. */
    static List<String> names(Project project) {
        return project.wirings().values().stream().map(view -> view.wiring().kind() + " " + view.name()).toList();
    }

    /** What is known of the shapes of a project. */
    Shapes shapes(Project project, Cancel cancel) {
        return shapes.map(known -> known.of(project, cancel)).orElseGet(() -> new Shapes(project, cancel));
    }

    /** What was found in a unit by the same rules, solving as much, among drawings and harnesses of the same names. */
    Optional<Found> found(Unit unit, RuleBook now, boolean everyNow, List<String> namesNow) {
        return book.equals(now) && every == everyNow && names.equals(namesNow)
                ? Optional.ofNullable(found.get(unit.name())) : Optional.empty();
    }

    /** The connections of a fitment, the ones that are known where it is the same; kept under a name. */
    Wired wired(String name, Fitment fitment, boolean all, Map<String, Wired> keep) {
        Wired fresh = new Wired(fitment, all);
        Wired known = wired.get(name);
        Wired used = known != null && known.every() == all && Identity.same(known.inputs(), fresh.inputs()) ? known
                : fresh;
        keep.put(name, used);
        return used;
    }
}
