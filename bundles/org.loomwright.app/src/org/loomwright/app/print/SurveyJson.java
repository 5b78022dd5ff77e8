// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import org.loomwright.app.SurveyCircuits.Surveyed;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.survey.Survey;

/** Electrical faults of every vehicle for machines; {@code docs/cli-json.md} describes it. */
public final class SurveyJson {

    private SurveyJson() {
    }

    /** The document of {@code electric --every}. */
    public static String of(String project, List<Surveyed> all) {
        return Json.object(json -> {
            json.name("schema").value(CheckJson.SCHEMA);
            json.name("command").value("electric");
            json.name("project").value(project);
            json.name("surveys").beginArray();
            for (Surveyed each : all) {
                surveyed(json, each);
            }
            json.endArray();
        });
    }

    private static void surveyed(JsonWriter json, Surveyed surveyed) throws IOException {
        Survey survey = surveyed.survey().survey();
        json.beginObject();
        json.name("platform").value(survey.schematic().fitment().platform().name());
        json.name("with").value(survey.schematic().fitment().words());
        json.name("vehicles").value(survey.schematic().fitment().domain().count());
        json.name("modes").value(surveyed.modes());
        json.name("blocks").value(surveyed.survey().blocks());
        json.name("assignments").value(survey.assignments());
        json.name("solves").value(survey.solves());
        json.name("bounded").beginArray();
        for (Mode each : survey.bounded()) {
            json.value(each.name());
        }
        json.endArray();
        json.name("faults").beginArray();
        for (Survey.Found each : survey.found()) {
            json.beginObject();
            json.name("rule").value(each.fault().rule());
            json.name("element").value(each.fault().piece().subject().owner() + ":"
                    + each.fault().piece().subject().element());
            json.name("label").value(each.fault().piece().subject().label());
            json.name("words").value(each.fault().words());
            json.name("mode").value(each.mode().name());
            json.name("judged").value(each.fault().memory().isEmpty());
            json.name("vehicles").value(each.when().words());
            json.name("count").value(each.when().count());
            json.name("certain").value(each.exact() ? each.when().words() : each.sure().words());
            json.name("exact").value(each.exact());
            json.name("advice").value(each.fault().advice());
            json.endObject();
        }
        json.endArray();
        json.endObject();
    }
}
