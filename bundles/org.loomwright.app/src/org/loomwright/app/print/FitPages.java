// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import org.loomwright.app.JudgeFit.Judged;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.VehicleWords;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.fit.Evidence;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitColumn;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitRow;
import org.loomwright.harness.link.Project;
import org.loomwright.rules.Report;
import org.loomwright.rules.Severity;

/** The fit of the harnesses of a project, as text and as JSON. */
public final class FitPages {

    private FitPages() {
    }

    /** What a verdict on half a source is worth. */
    static final String HALF_READ = "the text has errors: what could not be read is left out of this";

    /**
     * For each harness the verdict, the matrix and the figures that matter most.
     *
     * @param project the project that the harnesses belong to
     * @param found   what the rules found in it, and what of it was accepted
     */
    public static String text(Project project, List<Judged> all, Report found, Palette palette, int width) {
        StringBuilder out = new StringBuilder();
        if (!project.problems().isEmpty()) {
            out.append(palette.paint(Tone.WARNING, HALF_READ)).append("\n\n");
        }
        for (Judged judged : all) {
            FitText words = new FitText(judged, found);
            out.append(words.verdict(palette)).append("\n\n");
            String matrix = FitMatrix.of(judged, palette, width);
            if (!matrix.isEmpty()) {
                out.append(matrix);
                out.append(words.largestExcess().isEmpty() ? "" : words.largestExcess() + "\n").append('\n');
            }
        }
        return out.toString();
    }

    /** The document of {@code fit}; {@code docs/cli-json.md} describes it. */
    public static String json(Opened opened, List<Judged> all, Report report, Severity threshold) {
        return Json.object(json -> {
            CheckJson.head(json, "fit", threshold, report.objects(threshold));
            json.name("project").value(opened.place().name());
            json.name("folder").value(opened.place().prefix());
            json.name("harnesses");
            harnesses(json, all, report);
            json.name("findings");
            new FindingJson(json).write(report.findings());
        });
    }

    /** Writes an array with the matrix of each harness. */
    static void harnesses(JsonWriter json, List<Judged> all, Report found) throws IOException {
        json.beginArray();
        for (Judged judged : all) {
            FitReport report = judged.report();
            json.beginObject();
            json.name("harness").value(judged.harness().name());
            json.name("verdict").value(FitText.words(judged, found));
            json.name("evidence");
            evidence(json, report.problem().evidence());
            json.name("notJudged").beginArray();
            for (String drawing : report.problem().unjudged()) {
                json.value(drawing);
            }
            json.endArray();
            json.name("rows").beginArray();
            for (FitRow row : report.problem().rows()) {
                json.beginObject();
                json.name("place").value(row.place());
                json.name("branch").value(row.branch());
                json.endObject();
            }
            json.endArray();
            json.name("columns").beginArray();
            for (FitColumn column : report.problem().columns()) {
                json.beginObject();
                json.name("drawing").value(column.drawing());
                json.name("title").value(judged.titles().getOrDefault(column.drawing(), ""));
                json.name("vehicles").value(VehicleWords.of(column.vehicles()));
                json.endObject();
            }
            json.endArray();
            json.name("cells").beginArray();
            for (FitCell cell : report.cells()) {
                cell(json, cell);
            }
            json.endArray();
            json.endObject();
        }
        json.endArray();
    }

    private static void evidence(JsonWriter json, Evidence evidence) throws IOException {
        json.beginObject();
        json.name("sheet").value(evidence.sheet());
        json.name("sample").value(evidence.sample());
        json.name("scaled").value(evidence.scaled());
        json.name("missing").value(evidence.missing());
        json.endObject();
    }

    private static void cell(JsonWriter json, FitCell cell) throws IOException {
        json.beginObject();
        json.name("row").value(cell.row());
        json.name("column").value(cell.column());
        json.name("status").value(cell.status().words());
        if (cell.figures().isPresent()) {
            FitCell.Figures figures = cell.figures().get();
            json.name("marginMm").jsonValue(Millimetres.exact(figures.margin()));
            json.name("excessMm").jsonValue(Millimetres.exact(figures.excess()));
            json.name("alongMm").jsonValue(Millimetres.exact(figures.along()));
        }
        if (cell.reason().isPresent()) {
            json.name("reason").value(cell.reason().get().words());
        }
        json.endObject();
    }
}
