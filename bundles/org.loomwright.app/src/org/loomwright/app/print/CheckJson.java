// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.loomwright.app.Checked;
import org.loomwright.app.Contents;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.Tally;
import org.loomwright.app.known.Baseline;
import org.loomwright.app.revision.SinceRevision;
import org.loomwright.rules.Report;
import org.loomwright.rules.Severity;

/** The outcome of a check as JSON; {@code docs/cli-json.md} describes it. */
public final class CheckJson {

    /** Raised when a program that reads the documents must change. */
    public static final int SCHEMA = 1;

    private CheckJson() {
    }

    /** The document of a check without a baseline. */
    public static String of(List<Checked> all, Severity threshold, Shown shown) {
        boolean objects = all.stream().anyMatch(each -> each.report().objects(threshold));
        return of(all, threshold.words(), objects, shown, Optional.empty(), Optional.empty());
    }

    /**
     * The document of a check.
     *
     * @param threshold the least weight that is an objection, or {@code never}
     * @param objects   true when something is objected to
     * @param baseline  what became of the findings of a baseline, if there is one
     * @param since     what a revision had already, if the call names one
     */
    public static String of(List<Checked> all, String threshold, boolean objects, Shown shown,
            Optional<Baseline.Compared> baseline, Optional<SinceRevision.Since> since) {
        return Json.object(json -> {
            head(json, "check", threshold, objects);
            if (baseline.isPresent()) {
                baseline(json, baseline.get());
            }
            if (since.isPresent()) {
                json.name("since").beginObject();
                json.name("revision").value(since.get().revision());
                json.name("known").value(since.get().known());
                json.name("gone").value(since.get().gone());
                json.endObject();
            }
            json.name("projects").beginArray();
            for (Checked each : all) {
                json.beginObject();
                project(json, each, shown);
                json.endObject();
            }
            json.endArray();
        });
    }

    private static void baseline(JsonWriter json, Baseline.Compared compared) throws IOException {
        json.name("baseline").beginObject();
        json.name("file").value(compared.baseline().file());
        json.name("known").value(compared.known());
        json.name("gone").beginArray();
        for (Baseline.Entry gone : compared.gone()) {
            json.beginObject();
            json.name("fingerprint").value(gone.fingerprint());
            json.name("words").value(gone.words());
            json.endObject();
        }
        json.endArray();
        json.endObject();
    }

    /** The members that every document begins with. */
    static void head(JsonWriter json, String command, Severity threshold, boolean objects) throws IOException {
        head(json, command, threshold.words(), objects);
    }

    private static void head(JsonWriter json, String command, String threshold, boolean objects)
            throws IOException {
        json.name("schema").value(SCHEMA);
        json.name("command").value(command);
        json.name("threshold").value(threshold);
        json.name("passes").value(!objects);
    }

    /** The members of a project. */
    static void project(JsonWriter json, Opened opened, Report report, Shown shown) throws IOException {
        project(json, Checked.of(opened, report), shown);
    }

    private static void project(JsonWriter json, Checked checked, Shown shown) throws IOException {
        Tally tally = checked.tally();
        Contents contents = checked.contents();
        json.name("project").value(checked.place().name());
        json.name("folder").value(checked.place().prefix());
        json.name("files").value(contents.files());
        json.name("drawings").value(contents.drawings());
        json.name("harnesses").value(contents.harnesses());
        json.name("kits").value(contents.kits());
        json.name("counts").beginObject();
        json.name("errors").value(tally.errors());
        json.name("warnings").value(tally.warnings());
        json.name("notes").value(tally.notes());
        json.name("inherited").value(tally.inherited());
        json.name("accepted").value(tally.accepted());
        json.name("known").value(tally.known());
        json.endObject();
        json.name("findings");
        new FindingJson(json).write(shown.of(checked), checked::isKnown);
    }
}
