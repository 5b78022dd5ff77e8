// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.List;
import java.util.Set;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;
import org.loomwright.compare.facts.Slot;
import org.loomwright.compare.facts.Stated;
import org.loomwright.harness.Problem;

/**
 * All that sources state, a line a fact, in an order that does not depend on how they are written: what a text diff of
 * two such lists shows is a change of what is stated. Values stand as they are written.
 */
public final class FactsText {

    private static final Set<String> SILENT = Set.of("yes", "there", "1");

    private FactsText() {
    }

    /** The list; what could not be read stands at its end. */
    public static String of(Opened opened) {
        StringBuilder out = new StringBuilder();
        for (Item item : FactSheet.of(opened.project()).items().values()) {
            out.append(Cells.printable(label(item.id()))).append('\n');
            item.facts().forEach((slot, stated) -> {
                if (!slot.property().isDerived()) {
                    stated.forEach(each -> fact(slot, each, out));
                }
            });
        }
        List<Problem> problems = opened.project().sources().stream().flatMap(each -> each.problems().stream()).toList();
        problems.forEach(problem -> out.append(Cells.printable("not understood, line " + problem.span().line() + ": "
                + problem.message())).append('\n'));
        return out.toString();
    }

    /** {@code wire a of circuit 30 of front}. */
    private static String label(ItemId id) {
        int slash = id.owner().indexOf('/');
        return id.sort() != Sort.WIRE || slash < 0 ? id.label()
                : id.sort().word() + " " + id.name() + " of " + Sort.CIRCUIT.word() + " "
                + id.owner().substring(slash + 1) + " of " + id.owner().substring(0, slash);
    }

    private static void fact(Slot slot, Stated stated, StringBuilder out) {
        boolean exists = slot.property() == Property.EXISTS;
        if (exists && stated.isAlways()) {
            return;
        }
        String value = exists || SILENT.contains(stated.value().shown()) ? "" : stated.value().shown();
        String when = stated.isAlways() ? "" : exists ? stated.when().words() : "when " + stated.when().words();
        String words = String.join(" ", List.of(slot.words(), value, when)).replaceAll(" +", " ").strip();
        out.append("    ").append(Cells.printable(words)).append('\n');
    }
}
