// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.PlanHarness.Planned;

/** A plan in lines for a table: which vehicles take what, why not one harness, and what it takes over. */
public final class PlanNotes {

    private PlanNotes() {
    }

    /**
     * A line.
     *
     * @param head  a drawing, or an element of the harness; empty where it is about the harness as a whole
     * @param of    the vehicles of the drawing in words, or what the line is about
     * @param words what they take, or what is to be said
     */
    public record Note(String head, String of, String words) {
    }

    /** The lines, the application chart first. */
    public static List<Note> of(Planned planned) {
        List<Note> notes = new ArrayList<>();
        PlanChart.lines(planned).forEach(each -> notes.add(new Note(each.drawing(), each.vehicles(), each.takes())));
        if (planned.refusal().isPresent()) {
            StringBuilder reasons = new StringBuilder();
            RefusalText.reasons(planned, reasons);
            reasons.toString().lines().map(String::strip).forEach(each -> notes.add(new Note("", "why", each)));
        }
        planned.taken().forEach(each -> notes.add(new Note(each.element(), each.kind().words(), each.words())));
        return notes;
    }
}
