// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import org.loomwright.app.DraftHarness.Drafted;
import org.loomwright.app.PlanHarness.Planned;
import org.loomwright.compare.draft.Choice;

/** What a draft takes over from its drawings, and each choice that was made. */
public final class DraftText {

    private DraftText() {
    }

    /** For people. */
    public static String text(Drafted drafted) {
        StringBuilder out = new StringBuilder("\nwhat ").append(Cells.printable(drafted.draft().name()))
                .append(" takes over, where its drawings differ:\n");
        if (drafted.draft().choices().isEmpty()) {
            out.append("  nothing: they connect the same\n");
        }
        append(drafted.draft().choices(), out);
        if (drafted.orders() > 1) {
            out.append("  ").append(drafted.orders()).append(" orders of breakouts were planned; this is the best\n");
        }
        return out.toString();
    }

    /** What a written harness takes over that it lacked; nothing where it lacked nothing. */
    static void append(Planned planned, StringBuilder out) {
        if (!planned.taken().isEmpty()) {
            out.append("\nwhat ").append(Cells.printable(planned.harness().name())).append(" lacks of its drawings:\n");
            append(planned.taken(), out);
        }
    }

    private static void append(List<Choice> all, StringBuilder out) {
        for (Choice.Kind kind : Choice.Kind.values()) {
            List<Choice> choices = all.stream().filter(each -> each.kind() == kind).toList();
            if (!choices.isEmpty()) {
                out.append("  ").append(kind.words()).append('\n');
                choices.forEach(each -> out.append("    ").append(Cells.printable(each.element())).append(": ")
                        .append(Cells.printable(each.words())).append('\n'));
            }
        }
    }

    static void json(Drafted drafted, JsonWriter json) throws IOException {
        json.name("ordersPlanned").value(drafted.orders());
        json(drafted.draft().choices(), json);
    }

    static void json(List<Choice> choices, JsonWriter json) throws IOException {
        json.name("takenOver").beginArray();
        for (Choice each : choices) {
            json.beginObject();
            json.name("about").value(each.kind().words());
            json.name("element").value(each.element());
            json.name("words").value(each.words());
            json.endObject();
        }
        json.endArray();
    }
}
