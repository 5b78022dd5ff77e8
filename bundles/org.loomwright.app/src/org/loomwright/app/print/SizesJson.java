// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import org.loomwright.app.SizeCircuits.Sized;
import org.loomwright.electric.sizing.Sizes;

/** The smallest gauges and the least fuses for machines; {@code docs/cli-json.md} describes it. */
public final class SizesJson {

    private SizesJson() {
    }

    /** The document of {@code electric --sizes}. */
    public static String of(String project, List<Sized> all) {
        return Json.object(json -> {
            json.name("schema").value(CheckJson.SCHEMA);
            json.name("command").value("electric");
            json.name("project").value(project);
            json.name("sizes").beginArray();
            for (Sized each : all) {
                sized(json, each);
            }
            json.endArray();
        });
    }

    private static void sized(JsonWriter json, Sized sized) throws IOException {
        json.beginObject();
        json.name("platform").value(sized.schematic().fitment().platform().name());
        json.name("vehicles").value(sized.vehicles());
        json.name("with").value(sized.schematic().fitment().words());
        json.name("solves").value(sized.solves());
        json.name("bounded").value(sized.bounded());
        json.name("fuses").beginArray();
        for (Sizes.OfFuse each : sized.sizes().fuses()) {
            json.beginObject();
            json.name("element").value(each.demand().device().subject().owner() + ":"
                    + each.demand().device().subject().element());
            json.name("label").value(each.demand().device().subject().label());
            json.name("amps").jsonValue(ElectricJson.number(each.demand().amps()));
            json.name("mode").value(each.demand().mode());
            if (each.demand().device().rating() > 0) {
                json.name("ratedAmps").jsonValue(ElectricJson.number(each.demand().device().rating()));
            }
            if (each.least().isPresent()) {
                json.name("leastAmps").jsonValue(ElectricJson.number(each.least().getAsDouble()));
            }
            json.endObject();
        }
        json.endArray();
        json.name("wires").beginArray();
        for (Sizes.OfWire each : sized.sizes().wires()) {
            json.beginObject();
            json.name("element").value(each.demand().wire().subject().owner() + ":"
                    + each.demand().wire().subject().element());
            json.name("size").value(each.now().toString());
            json.name("amps").jsonValue(ElectricJson.number(each.demand().amps()));
            json.name("mode").value(each.demand().mode());
            if (each.least().isPresent()) {
                json.name("least").value(each.least().get().toString());
            }
            json.name("tooSmall").value(each.tooSmall());
            json.name("decidedBy").value(each.decides());
            json.endObject();
        }
        json.endArray();
        json.endObject();
    }
}
