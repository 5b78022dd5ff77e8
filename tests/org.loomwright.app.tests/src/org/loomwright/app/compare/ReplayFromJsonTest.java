// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.loomwright.app.CompareRevisions;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.app.print.CompareJson;
import org.loomwright.compare.FactComparer;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Severity;

/** The JSON document of a comparison is all that is needed to make the new side from the old one. */
class ReplayFromJsonTest {

    private static final int ROUNDS = 300;
    private static final int WIRES = 14;
    private static final Project NOTHING = Project.link(List.of());

    private final Sides sides = new Sides();
    private final CompareRevisions compare = new CompareRevisions(new FactComparer(), List.of());

    private List<JsonObject> deltas(Project old, Project now) {
        String text = CompareJson.of(compare.compare(opened(old), opened(now), Cancel.NEVER, Progress.NONE),
                Severity.WARNING);
        List<JsonObject> deltas = new ArrayList<>();
        for (JsonElement change : JsonParser.parseString(text).getAsJsonObject().getAsJsonArray("changes")) {
            change.getAsJsonObject().getAsJsonArray("deltas").forEach(each -> deltas.add(each.getAsJsonObject()));
        }
        return deltas;
    }

    private static Opened opened(Project project) {
        return new Opened(new ProjectPlace("side", Path.of(""), "", List.of()), project);
    }

    /** All that a side states, from the document that leads from nothing to it: facts by element and slot. */
    private Map<String, Map<String, String>> content(Project side) {
        return applied(new TreeMap<>(), deltas(NOTHING, side));
    }

    private static Map<String, Map<String, String>> applied(Map<String, Map<String, String>> old,
            List<JsonObject> deltas) {
        Map<String, JsonObject> names = new HashMap<>();
        Set<String> taken = new HashSet<>();
        Set<String> removed = new HashSet<>();
        for (JsonObject each : deltas) {
            String kind = each.get("delta").getAsString();
            if (kind.equals("renamed")) {
                names.put(each.get("from").toString(), each.getAsJsonObject("element"));
                taken.add(each.get("element").toString());
            } else if (kind.equals("removed")) {
                removed.add(each.get("element").toString());
            }
        }
        removed.stream().filter(taken::contains).forEach(each -> {
            JsonObject gone = JsonParser.parseString(each).getAsJsonObject();
            gone.addProperty("name", gone.get("name").getAsString() + " (gone)");
            names.put(each, gone);
        });
        Map<String, Map<String, String>> now = new TreeMap<>();
        old.forEach((element, facts) -> {
            if (!removed.contains(element)) {
                Map<String, String> renamed = new TreeMap<>();
                facts.forEach((slot, stated) -> renamed.put(slotNamed(slot, names),
                        statedNamed(stated, names)));
                now.put(names.containsKey(element) ? names.get(element).toString() : element, renamed);
            }
        });
        for (JsonObject each : deltas) {
            String element = each.get("element").toString();
            switch (each.get("delta").getAsString()) {
                case "restated" -> {
                    Map<String, String> facts = now.get(element);
                    String was = facts.getOrDefault(slot(each), "[]");
                    assertEquals(stated(each.getAsJsonArray("was")), was, element);
                    if (each.getAsJsonArray("is").isEmpty()) {
                        facts.remove(slot(each));
                    } else {
                        facts.put(slot(each), stated(each.getAsJsonArray("is")));
                    }
                }
                case "added" -> {
                    Map<String, String> facts = new TreeMap<>();
                    each.getAsJsonArray("facts").forEach(fact -> facts.put(slot(fact.getAsJsonObject()),
                            stated(fact.getAsJsonObject().getAsJsonArray("stated"))));
                    assertNull(now.put(element, facts), element);
                }
                default -> {
                }
            }
        }
        return now;
    }

    private static String slot(JsonObject fact) {
        JsonArray slot = new JsonArray();
        slot.add(fact.get("property"));
        slot.add(fact.has("subjectPieces") ? fact.get("subjectPieces") : fact.get("subject"));
        return slot.toString();
    }

    private static String stated(JsonArray stated) {
        List<String> all = new ArrayList<>();
        for (JsonElement each : stated) {
            JsonObject fact = each.getAsJsonObject();
            JsonArray one = new JsonArray();
            one.add(fact.has("pieces") ? fact.get("pieces") : fact.get("value"));
            one.add(fact.get("when"));
            all.add(one.toString());
        }
        return all.stream().sorted().toList().toString();
    }

    /** A slot with other names, wherever it names an element. */
    private static String slotNamed(String slot, Map<String, JsonObject> names) {
        return renamed(JsonParser.parseString(slot), names).toString();
    }

    private static String statedNamed(String stated, Map<String, JsonObject> names) {
        List<String> all = new ArrayList<>();
        renamed(JsonParser.parseString(stated), names).getAsJsonArray().forEach(each -> all.add(each.toString()));
        return all.stream().sorted().toList().toString();
    }

    private static JsonElement renamed(JsonElement each, Map<String, JsonObject> names) {
        if (each instanceof JsonArray array) {
            JsonArray renamed = new JsonArray();
            array.forEach(piece -> renamed.add(renamed(piece, names)));
            return renamed;
        }
        return each instanceof JsonPrimitive ? each : names.getOrDefault(each.toString(), each.getAsJsonObject());
    }

    private static List<Path> revisions() throws IOException {
        try (Stream<Path> entries = Files.list(RevisionsTest.FOLDER)) {
            return entries.filter(Files::isDirectory).sorted().toList();
        }
    }

    private void replays(Project old, Project now, String about) {
        assertEquals(content(now), applied(content(old), deltas(old, now)), about);
    }

    @Test
    void theDocumentsOfHandMadeRevisionsGiveTheOtherSide() throws IOException {
        int renames = 0;
        for (Path folder : revisions()) {
            Project old = sides.project(Sides.files(folder.resolve("old")));
            Project now = sides.project(Sides.files(folder.resolve("new")));
            replays(old, now, folder + " forth");
            replays(now, old, folder + " back");
            renames += (int) deltas(old, now).stream()
                    .filter(each -> each.get("delta").getAsString().equals("renamed")).count();
        }
        assertTrue(renames >= 5, renames + " renames: the revisions do too little");
    }

    @Test
    void theDocumentsOfInventedRevisionsGiveTheOtherSide() {
        for (int seed = 1; seed <= ROUNDS; seed++) {
            Invented invented = Invented.of(WIRES, seed);
            replays(sides.project(Map.of("front.loom", invented.text())),
                    sides.project(Map.of("front.loom", invented.revised(seed).text())), "seed " + seed);
        }
    }
}
