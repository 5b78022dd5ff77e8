// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import java.util.function.Predicate;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.rules.Finding;

/** Findings as JSON; {@code docs/cli-json.md} says what each member means. Members come in a fixed order. */
final class FindingJson {

    private final JsonWriter json;

    FindingJson(JsonWriter json) {
        this.json = json;
    }

    /** Writes an array of findings, none of which was set aside. */
    void write(List<Finding> findings) throws IOException {
        write(findings, finding -> false);
    }

    /** Writes an array of findings, some of which were set aside. */
    void write(List<Finding> findings, Predicate<Finding> known) throws IOException {
        json.beginArray();
        for (Finding finding : findings) {
            write(finding, known.test(finding));
        }
        json.endArray();
    }

    private void write(Finding finding, boolean known) throws IOException {
        json.beginObject();
        json.name("rule").value(finding.rule());
        json.name("severity").value(finding.severity().words());
        json.name("inherited").value(finding.inherited());
        json.name("known").value(known);
        json.name("element").value(finding.element());
        json.name("subject").value(finding.subject());
        json.name("sentence").value(finding.sentence());
        json.name("place");
        label(finding.place());
        json.name("related").beginArray();
        for (Finding.Label label : finding.related()) {
            label(label);
        }
        json.endArray();
        json.name("derivation").beginArray();
        for (String step : finding.derivation()) {
            json.value(step);
        }
        json.endArray();
        json.name("basis").value(finding.basis());
        json.name("vehicles");
        vehicles(finding);
        json.name("advice").value(finding.advice());
        json.name("fixes").beginArray();
        for (Finding.Fix fix : finding.fixes()) {
            fix(fix);
        }
        json.endArray();
        json.name("acceptance");
        acceptance(finding);
        json.name("fingerprint").value(finding.fingerprint());
        json.endObject();
    }

    private void label(Finding.Label label) throws IOException {
        json.beginObject();
        span(label.span());
        json.name("text").value(label.text());
        json.endObject();
    }

    private void span(Span span) throws IOException {
        json.name("file").value(span.file());
        json.name("line").value(span.line());
        json.name("column").value(span.column());
        json.name("offset").value(span.offset());
        json.name("length").value(span.length());
    }

    private void vehicles(Finding finding) throws IOException {
        if (finding.affected().isEmpty()) {
            json.nullValue();
            return;
        }
        Finding.Affected affected = finding.affected().get();
        json.beginObject();
        json.name("words").value(affected.words());
        json.name("count").value(affected.count().orElse(null));
        json.name("of").value(affected.of().orElse(null));
        json.name("bounded").value(affected.bounded());
        json.endObject();
    }

    private void fix(Finding.Fix fix) throws IOException {
        json.beginObject();
        json.name("title").value(fix.title());
        json.name("edits").beginArray();
        for (TextEdit edit : fix.edits()) {
            json.beginObject();
            span(edit.span());
            json.name("text").value(edit.text());
            json.endObject();
        }
        json.endArray();
        json.endObject();
    }

    private void acceptance(Finding finding) throws IOException {
        if (finding.acceptance().isEmpty()) {
            json.nullValue();
            return;
        }
        Finding.Acceptance acceptance = finding.acceptance().get();
        json.beginObject();
        json.name("how").value(acceptance.how().words());
        json.name("reason").value(acceptance.reason());
        span(acceptance.place());
        json.endObject();
    }
}
