// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.Tally;
import org.loomwright.rules.Report;
import org.loomwright.rules.Severity;

/** The outcome of a check as JSON; {@code docs/cli-json.md} describes it. */
public final class CheckJson {

    /** Raised when a program that reads the documents must change. */
    public static final int SCHEMA = 1;

    private CheckJson() {
    }

    /**
     * A project and what was found in it.
     *
     * @param opened the project
     * @param report what was found
     */
    public record Checked(Opened opened, Report report) {
    }

    /** The document of a check. */
    public static String of(List<Checked> all, Severity threshold, Shown shown) {
        return Json.object(json -> {
            head(json, "check", threshold, all.stream().anyMatch(each -> each.report().objects(threshold)));
            json.name("projects").beginArray();
            for (Checked each : all) {
                json.beginObject();
                project(json, each.opened(), each.report(), shown);
                json.endObject();
            }
            json.endArray();
        });
    }

    /** The members that every document begins with. */
    static void head(JsonWriter json, String command, Severity threshold, boolean objects) throws IOException {
        json.name("schema").value(SCHEMA);
        json.name("command").value(command);
        json.name("threshold").value(threshold.words());
        json.name("passes").value(!objects);
    }

    /** The members of a project. */
    static void project(JsonWriter json, Opened opened, Report report, Shown shown) throws IOException {
        Tally tally = Tally.of(report);
        json.name("project").value(opened.place().name());
        json.name("folder").value(opened.place().prefix());
        json.name("files").value(opened.project().sources().size());
        json.name("drawings").value(opened.project().drawings().size());
        json.name("harnesses").value(opened.project().harnesses().size());
        json.name("kits").value(opened.project().kits().size());
        json.name("counts").beginObject();
        json.name("errors").value(tally.errors());
        json.name("warnings").value(tally.warnings());
        json.name("notes").value(tally.notes());
        json.name("inherited").value(tally.inherited());
        json.name("accepted").value(tally.accepted());
        json.endObject();
        json.name("findings");
        new FindingJson(json).write(report.findings().stream().filter(shown::shows).toList());
    }
}
