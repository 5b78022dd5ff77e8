// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.app.Checked;
import org.loomwright.app.JudgeFit;
import org.loomwright.app.MakeSheets;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.ProveProject;
import org.loomwright.app.ProveProject.Proof;
import org.loomwright.app.TextProject;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Report;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/** The documents for programs, read back. */
class JsonTest {

    private static final Shown ALL = new Shown(true, true, true);

    private static Report check(Opened opened) {
        return StandardRules.engine().check(opened.project(), Settings.TIMELESS, Cancel.NEVER, Progress.NONE);
    }

    @Test
    void aFindingHasItsPlaceItsVehiclesAndItsFix() throws BadCall {
        Opened opened = TextProject.open(TextProject.SMALL.replace("from J1:2 to F1:1", "from J1:2 to F1:3"));
        Report report = check(opened);
        JsonObject document = JsonParser.parseString(CheckJson.of(List.of(Checked.of(opened, report)),
                Severity.WARNING, ALL)).getAsJsonObject();
        assertEquals(CheckJson.SCHEMA, document.get("schema").getAsInt());
        assertEquals("check", document.get("command").getAsString());
        assertFalse(document.get("passes").getAsBoolean());
        JsonObject project = document.getAsJsonArray("projects").get(0).getAsJsonObject();
        assertEquals("demo", project.get("project").getAsString());
        assertEquals("demo/", project.get("folder").getAsString());
        JsonArray findings = project.getAsJsonArray("findings");
        assertEquals(report.findings().size(), findings.size());
        JsonObject unknown = null;
        for (var each : findings) {
            if (each.getAsJsonObject().get("rule").getAsString().equals("unknown-cavity")) {
                unknown = each.getAsJsonObject();
            }
        }
        assertEquals("error", unknown.get("severity").getAsString());
        JsonObject place = unknown.getAsJsonObject("place");
        assertEquals("all.loom", place.get("file").getAsString());
        String text = opened.project().sources().getFirst().text();
        int offset = place.get("offset").getAsInt();
        assertTrue(text.substring(offset, offset + place.get("length").getAsInt()).contains("3"));
        JsonObject vehicles = unknown.getAsJsonObject("vehicles");
        assertEquals("fogLamps", vehicles.get("words").getAsString());
        assertEquals(2, vehicles.get("count").getAsInt());
        assertEquals(4, vehicles.get("of").getAsInt());
        assertEquals(32, unknown.get("fingerprint").getAsString().length());
    }

    @Test
    void proofAndFitHaveTheMatrix() throws BadCall {
        Opened opened = TextProject.open(TextProject.SMALL);
        Proof proof = new ProveProject(StandardRules.engine(), new JudgeFit(new ChainJudge(), FitDefaults.usual()))
                .prove(opened, Settings.TIMELESS, Severity.ERROR, Cancel.NEVER, Progress.NONE);
        JsonObject fit = JsonParser.parseString(FitPages.json(opened, proof.fits(), new Report(List.of(),
                proof.report().work()), Severity.WARNING)).getAsJsonObject();
        JsonObject harness = fit.getAsJsonArray("harnesses").get(0).getAsJsonObject();
        assertEquals("fits the drawings as transcribed", harness.get("verdict").getAsString());
        assertEquals(1, harness.getAsJsonObject("evidence").get("sample").getAsInt());
        JsonObject cell = harness.getAsJsonArray("cells").get(0).getAsJsonObject();
        assertEquals("41", cell.get("marginMm").getAsString());
        JsonObject document = JsonParser.parseString(ProofPages.json(proof, Severity.ERROR, ALL,
                StandardRules.book().infos(), "out")).getAsJsonObject();
        assertEquals(harness, document.getAsJsonArray("fits").get(0));
        assertEquals(MakeSheets.of(opened.project()).size(),
                document.getAsJsonObject("lists").getAsJsonArray("files").size());
        assertFalse(document.getAsJsonArray("notChecked").isEmpty());
    }

    @Test
    void theDocumentIsReadableAndEndsWithALineEnd() throws BadCall {
        String text = CheckJson.of(List.of(), Severity.NOTE, ALL);
        assertEquals("""
                {
                  "schema": 1,
                  "command": "check",
                  "threshold": "note",
                  "passes": true,
                  "projects": []
                }
                """, text);
    }
}
