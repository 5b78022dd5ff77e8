// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.loomwright.app.CompareRevisions.Compared;
import org.loomwright.app.JudgeSold.Judged;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.change.Delta;
import org.loomwright.compare.consequence.Effect;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Slot;
import org.loomwright.compare.facts.Stated;
import org.loomwright.compare.facts.Value;
import org.loomwright.harness.Span;
import org.loomwright.rules.Severity;

/** A comparison as JSON; {@code docs/cli-json.md} describes it. */
public final class CompareJson {

    private final JsonWriter json;
    private final Compared compared;

    private CompareJson(JsonWriter json, Compared compared) {
        this.json = json;
        this.compared = compared;
    }

    /** The document of a comparison. */
    public static String of(Compared compared, Severity threshold) {
        return Json.object(json -> {
            CheckJson.head(json, "compare", threshold, compared.objects(threshold));
            new CompareJson(json, compared).write();
        });
    }

    /** The document of a project that was held against its sold revisions. */
    public static String of(List<Judged> judged, Severity threshold) {
        boolean objects = judged.stream().anyMatch(each -> each.compared().objects(threshold));
        return Json.object(json -> {
            CheckJson.head(json, "compare", threshold, objects);
            json.name("sold").beginArray();
            for (Judged each : judged) {
                json.beginObject();
                json.name("kit").value(each.kit().name().text());
                json.name("revision").value(each.sold().revision());
                json.name("at").value(each.sold().at());
                json.name("passes").value(!each.compared().objects(threshold));
                new CompareJson(json, each.compared()).write();
                json.endObject();
            }
            json.endArray();
        });
    }

    private void write() throws IOException {
        side("old", compared.old());
        side("new", compared.now());
        json.name("felt").value(compared.comparison().felt().size());
        json.name("changes").beginArray();
        for (Change change : compared.comparison().changes()) {
            change(change);
        }
        json.endArray();
        json.name("consequences").beginArray();
        for (Effect effect : compared.effects()) {
            effect(effect);
        }
        json.endArray();
    }

    private void side(String name, Opened opened) throws IOException {
        json.name(name).beginObject();
        json.name("project").value(opened.place().name());
        json.name("folder").value(opened.place().prefix());
        json.name("files").value(opened.project().sources().size());
        json.name("problems").value(opened.project().sources().stream().mapToInt(each -> each.problems().size()).sum());
        json.endObject();
    }

    private void change(Change change) throws IOException {
        json.beginObject();
        json.name("kind").value(change.kind().words());
        json.name("class").value(change.aspect().words());
        json.name("attention").value(change.aspect().attention().words());
        json.name("felt").value(change.isFelt());
        item("element", change.item());
        json.name("sentence").value(change.sentence());
        json.name("vehicles").value(change.felt().words());
        json.name("tally").value(change.felt().tally());
        json.name("caveat").value(change.felt().caveat());
        span("before", change.before());
        span("after", change.after());
        json.name("deltas").beginArray();
        for (Delta delta : change.deltas()) {
            delta(delta);
        }
        json.endArray();
        json.endObject();
    }

    private void delta(Delta delta) throws IOException {
        json.beginObject();
        switch (delta) {
            case Delta.Added added -> element("added", added.element());
            case Delta.Removed removed -> element("removed", removed.element());
            case Delta.Renamed renamed -> {
                json.name("delta").value("renamed");
                item("from", renamed.from());
                item("element", renamed.item());
            }
            case Delta.Restated restated -> {
                json.name("delta").value("restated");
                item("element", restated.item());
                slot(restated.slot());
                stated("was", restated.was());
                stated("is", restated.is());
            }
        }
        json.endObject();
    }

    private void element(String delta, Item item) throws IOException {
        json.name("delta").value(delta);
        item("element", item.id());
        json.name("facts").beginArray();
        for (var fact : item.facts().entrySet()) {
            if (!fact.getKey().property().isDerived()) {
                json.beginObject();
                slot(fact.getKey());
                stated("stated", fact.getValue());
                json.endObject();
            }
        }
        json.endArray();
    }

    private void slot(Slot slot) throws IOException {
        json.name("property").value(slot.property().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        json.name("subject").value(slot.subject().shown());
        pieces("subjectPieces", slot.subject());
    }

    /** A value in its pieces, where it names an element: whoever applies the deltas needs to know what is a name. */
    private void pieces(String name, Value value) throws IOException {
        if (value.mentions().isEmpty()) {
            return;
        }
        json.name(name).beginArray();
        for (Value.Token token : value.tokens()) {
            switch (token) {
                case Value.Word word -> json.value(word.shown());
                case Value.Mention mention -> id(mention.id());
            }
        }
        json.endArray();
    }

    private void stated(String name, List<Stated> all) throws IOException {
        json.name(name).beginArray();
        for (Stated each : all) {
            json.beginObject();
            json.name("value").value(each.value().shown());
            pieces("pieces", each.value());
            json.name("when").value(each.isAlways() ? "" : each.when().words());
            json.endObject();
        }
        json.endArray();
    }

    private void item(String name, ItemId id) throws IOException {
        json.name(name);
        id(id);
    }

    private void id(ItemId id) throws IOException {
        json.beginObject();
        json.name("sort").value(id.sort().word());
        json.name("owner").value(id.owner());
        json.name("name").value(id.name());
        json.endObject();
    }

    private void span(String name, Optional<Span> span) throws IOException {
        json.name(name);
        if (span.isEmpty()) {
            json.nullValue();
            return;
        }
        json.beginObject();
        json.name("file").value(span.get().file());
        json.name("line").value(span.get().line());
        json.name("column").value(span.get().column());
        json.endObject();
    }

    private void effect(Effect effect) throws IOException {
        json.beginObject();
        json.name("consequence").value(effect.id());
        json.name("title").value(effect.title());
        json.name("headline").value(effect.headline().orElse(""));
        json.name("lines").beginArray();
        for (Effect.Line line : effect.lines()) {
            json.beginObject();
            json.name("direction").value(line.direction().words());
            json.name("subject").value(line.subject());
            json.name("what").value(line.what());
            json.name("before").value(line.before());
            json.name("after").value(line.after());
            json.name("vehicles").value(line.vehicles());
            json.name("weight").value(line.weight().map(Severity::words).orElse(""));
            json.endObject();
        }
        json.endArray();
        json.endObject();
    }
}
