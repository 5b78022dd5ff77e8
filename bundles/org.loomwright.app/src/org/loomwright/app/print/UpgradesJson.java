// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import org.loomwright.app.UpgradeCircuits.Change;
import org.loomwright.app.UpgradeCircuits.Upgraded;
import org.loomwright.electric.survey.Fault;

/** What upgrades do to currents and voltages, for machines; {@code docs/cli-json.md} describes it. */
public final class UpgradesJson {

    private UpgradesJson() {
    }

    /** The document of {@code electric --upgrades}. */
    public static String of(String project, List<Upgraded> all) {
        return Json.object(json -> {
            json.name("schema").value(CheckJson.SCHEMA);
            json.name("command").value("electric");
            json.name("project").value(project);
            json.name("upgrades").beginArray();
            for (Upgraded each : all) {
                upgraded(json, each);
            }
            json.endArray();
        });
    }

    private static void upgraded(JsonWriter json, Upgraded upgraded) throws IOException {
        json.beginObject();
        json.name("upgrade").value(upgraded.upgrade());
        json.name("with").value(upgraded.fitted());
        json.name("before").value(upgraded.before());
        json.name("after").value(upgraded.after());
        change(json, "leastLampShare", upgraded.lamp());
        change(json, "mostWireShare", upgraded.wire());
        change(json, "mostFuseShare", upgraded.fuse());
        change(json, "mostBatteryAmps", upgraded.battery());
        faults(json, "gained", upgraded.gained());
        faults(json, "lost", upgraded.lost());
        json.endObject();
    }

    /** A figure that nothing has is left out. */
    private static void change(JsonWriter json, String name, Change change) throws IOException {
        json.name(name).beginObject();
        if (!Double.isNaN(change.before())) {
            json.name("before").jsonValue(ElectricJson.number(change.before()));
        }
        if (!Double.isNaN(change.after())) {
            json.name("after").jsonValue(ElectricJson.number(change.after()));
        }
        json.endObject();
    }

    private static void faults(JsonWriter json, String name, List<Fault> faults) throws IOException {
        json.name(name).beginArray();
        for (Fault each : faults) {
            json.beginObject();
            json.name("rule").value(each.rule());
            json.name("element").value(each.piece().subject().owner() + ":" + each.piece().subject().element());
            json.name("label").value(each.piece().subject().label());
            json.name("words").value(each.words());
            json.name("advice").value(each.advice());
            json.endObject();
        }
        json.endArray();
    }
}
