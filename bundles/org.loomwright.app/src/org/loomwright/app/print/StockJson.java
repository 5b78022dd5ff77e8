// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import org.loomwright.app.BrowseStock.Bay;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.quantity.Quantity;

/** The stock as JSON; {@code docs/cli-json.md} describes it. */
public final class StockJson {

    private StockJson() {
    }

    /** The document of some parts. */
    public static String of(List<Bay> bays) {
        return Json.object(json -> {
            json.name("schema").value(CheckJson.SCHEMA);
            json.name("command").value("stock");
            json.name("parts").beginArray();
            for (Bay bay : bays) {
                for (Part part : bay.parts()) {
                    json.beginObject();
                    part(json, part);
                    json.endObject();
                }
            }
            json.endArray();
        });
    }

    private static void part(JsonWriter json, Part part) throws IOException {
        json.name("kind").value(part.kind().word());
        json.name("name").value(part.name().text());
        json.name("title").value(part.title());
        json.name("like").value(part.base().map(Ref::text).orElse(""));
        json.name("file").value(part.span().file());
        json.name("line").value(part.span().line());
        json.name("words").beginArray();
        for (Fact<Part.Word> fact : part.words()) {
            json.beginObject();
            json.name("word").value(fact.value().kind().word());
            json.name("text").value(fact.value().text());
            json.endObject();
        }
        json.endArray();
        json.name("figures").beginArray();
        for (Fact<Part.Figure> fact : part.figures()) {
            json.beginObject();
            json.name("figure").value(fact.value().kind().word());
            json.name("from").value(fact.value().from().written());
            json.name("upTo").value(fact.value().upTo().map(Quantity::written).orElse(""));
            json.name("source").value(fact.value().basis());
            json.endObject();
        }
        json.endArray();
        json.name("sizes").beginArray();
        for (Part.Size size : part.sizes()) {
            json.beginObject();
            json.name("size").value(size.size().written());
            json.name("diameter").value(size.diameter().map(Quantity::written).orElse(""));
            json.name("mm2").value(new BigDecimal(PartWords.area(size.size())));
            json.name("mohmPerMetre").value(new BigDecimal(PartWords.milliohms(size.size())));
            json.name("source").value(size.basis());
            json.name("sectionSource").value(size.size().basis());
            json.endObject();
        }
        json.endArray();
        json.name("pins").beginArray();
        for (Part.Pin pin : part.pins()) {
            json.beginObject();
            json.name("name").value(pin.name().text());
            json.name("title").value(pin.title());
            json.endObject();
        }
        json.endArray();
        names(json, "states", part.states());
        json.name("joins").beginArray();
        for (Part.Join join : part.joins()) {
            json.beginObject();
            json.name("from").value(join.from().text());
            json.name("to").value(join.to().text());
            json.name("through").value(join.through().map(Quantity::written).orElse(""));
            names(json, "while", join.states());
            json.name("protects").value(join.protective());
            json.endObject();
        }
        json.endArray();
    }

    private static void names(JsonWriter json, String member, List<Name> names) throws IOException {
        json.name(member).beginArray();
        for (Name name : names) {
            json.value(name.text());
        }
        json.endArray();
    }
}
