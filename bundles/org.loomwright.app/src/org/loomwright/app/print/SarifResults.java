// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.loomwright.app.Checked;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.rules.Finding;

/** Findings of one project as results after SARIF 2.1.0, section 3.27. */
final class SarifResults {

    private static final String FINGERPRINT = "finding/v1";
    private static final String ACCEPTED = "accepted";

    private final JsonWriter json;
    private final Checked checked;
    private final Map<String, Integer> rules;
    private final SarifPlaces places;

    /**
     * @param rules indices of rules by id
     */
    SarifResults(JsonWriter json, Checked checked, Map<String, Integer> rules) {
        this.json = json;
        this.checked = checked;
        this.rules = rules;
        this.places = new SarifPlaces(json, checked);
    }

    /** Writes findings, an object each. */
    void write(List<Finding> findings) throws IOException {
        for (Finding finding : findings) {
            json.beginObject();
            json.name("ruleId").value(finding.rule());
            json.name("ruleIndex").value(rules.get(finding.rule()));
            json.name("kind").value(finding.inherited() ? "informational" : "fail");
            json.name("level").value(finding.inherited() ? "none" : finding.severity().words());
            json.name("message");
            places.message(message(finding));
            json.name("locations").beginArray();
            if (finding.place().span() != Span.NONE && !finding.place().span().file().isEmpty()) {
                location(finding);
            }
            json.endArray();
            related(finding);
            json.name("partialFingerprints").beginObject();
            json.name(FINGERPRINT).value(finding.fingerprint());
            json.endObject();
            suppressions(finding);
            fixes(finding);
            properties(finding);
            json.endObject();
        }
    }

    /** What is wrong, for which vehicles, and what to try. */
    private static String message(Finding finding) {
        StringBuilder words = new StringBuilder(sentence(finding.sentence()));
        finding.affected().ifPresent(
                affected -> words.append(" Vehicles: ").append(FindingText.vehicles(affected)).append('.'));
        if (!finding.advice().isEmpty()) {
            words.append(" Try: ").append(finding.advice()).append('.');
        }
        return words.toString();
    }

    private static String sentence(String words) {
        return words.isEmpty() ? words
                : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".";
    }

    private void location(Finding finding) throws IOException {
        json.beginObject();
        json.name("physicalLocation");
        places.physical(finding.place().span());
        if (!finding.element().isEmpty()) {
            json.name("logicalLocations").beginArray().beginObject();
            json.name("name").value(finding.subject());
            json.name("fullyQualifiedName").value(finding.element());
            json.endObject().endArray();
        }
        if (!finding.place().text().isEmpty()) {
            json.name("message");
            places.message(finding.place().text());
        }
        json.endObject();
    }

    private void related(Finding finding) throws IOException {
        List<Finding.Label> labels = finding.related().stream().filter(label -> !label.span().file().isEmpty())
                .toList();
        if (labels.isEmpty()) {
            return;
        }
        json.name("relatedLocations").beginArray();
        int id = 1;
        for (Finding.Label label : labels) {
            places.location(label, id++);
        }
        json.endArray();
    }

    /** Each result has the array, an empty one for what counts: then a reader knows that somebody looked (3.27.23). */
    private void suppressions(Finding finding) throws IOException {
        json.name("suppressions").beginArray();
        if (finding.acceptance().isPresent()) {
            Finding.Acceptance acceptance = finding.acceptance().get();
            json.beginObject();
            json.name("kind").value("inSource");
            json.name("status").value(ACCEPTED);
            json.name("justification").value(acceptance.how().words() + ": " + acceptance.reason());
            json.name("location").beginObject();
            json.name("physicalLocation");
            places.physical(acceptance.place());
            json.endObject();
            json.endObject();
        } else if (checked.isKnown(finding)) {
            json.beginObject();
            json.name("kind").value("external");
            json.name("status").value(ACCEPTED);
            json.name("justification").value("it was known before");
            json.endObject();
        }
        json.endArray();
    }

    private void fixes(Finding finding) throws IOException {
        if (finding.fixes().isEmpty()) {
            return;
        }
        json.name("fixes").beginArray();
        for (Finding.Fix fix : finding.fixes()) {
            Map<String, List<TextEdit>> changes = new LinkedHashMap<>();
            fix.edits().forEach(edit -> changes.computeIfAbsent(edit.span().file(), file -> new ArrayList<>())
                    .add(edit));
            json.beginObject();
            json.name("description");
            places.message(fix.title().isEmpty() ? "a change that mends it" : fix.title());
            json.name("artifactChanges").beginArray();
            for (Map.Entry<String, List<TextEdit>> change : changes.entrySet()) {
                change(change.getKey(), change.getValue());
            }
            json.endArray();
            json.endObject();
        }
        json.endArray();
    }

    private void change(String file, List<TextEdit> edits) throws IOException {
        json.beginObject();
        json.name("artifactLocation");
        places.artifact(file);
        json.name("replacements").beginArray();
        for (TextEdit edit : edits) {
            json.beginObject();
            json.name("deletedRegion");
            places.region(edit.span());
            json.name("insertedContent").beginObject();
            json.name("text").value(edit.text());
            json.endObject();
            json.endObject();
        }
        json.endArray();
        json.endObject();
    }

    private void properties(Finding finding) throws IOException {
        json.name("properties").beginObject();
        json.name("project").value(checked.place().name());
        json.name("inherited").value(finding.inherited());
        if (!finding.basis().isEmpty()) {
            json.name("basis").value(finding.basis());
        }
        if (!finding.derivation().isEmpty()) {
            json.name("derivation").beginArray();
            for (String step : finding.derivation()) {
                json.value(step);
            }
            json.endArray();
        }
        if (finding.affected().isPresent()) {
            json.name("vehicles").value(finding.affected().get().words());
            json.name("vehicleCount").value(finding.affected().get().count().orElse(null));
            json.name("bounded").value(finding.affected().get().bounded());
        }
        json.endObject();
    }
}
