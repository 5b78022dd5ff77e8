// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import org.loomwright.app.Checked;
import org.loomwright.rules.Finding;
import org.loomwright.rules.RuleInfo;

/**
 * The outcome of a check after SARIF 2.1.0, the Static Analysis Results Interchange Format (OASIS Standard of 2020,
 * with errata of 2023): one run for the call, whatever number of projects. It says nothing of time and machine, so that
 * equal input gives equal bytes. Accepted findings are in it as suppressed results.
 */
public final class CheckSarif {

    private static final String SCHEMA =
            "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
    private static final String MESSAGES = "docs/language/messages.md";

    private CheckSarif() {
    }

    /**
     * What a log says about the call besides its results.
     *
     * @param version  of the program
     * @param exitCode that the call ends with
     * @param refusals why projects could not be checked, one line each
     * @param remarks  on the baseline, one line each
     */
    public record Call(String version, int exitCode, List<String> refusals, List<String> remarks) {
    }

    /**
     * The document.
     *
     * @param rules all rules that were asked, in order
     */
    public static String of(List<Checked> all, Shown shown, List<RuleInfo> rules, Call call) {
        Shown suppressed = new Shown(shown.inherited(), true, shown.known());
        Map<String, Integer> indices = new HashMap<>();
        rules.forEach(rule -> indices.putIfAbsent(rule.id(), indices.size()));
        TreeSet<String> others = new TreeSet<>();
        all.forEach(checked -> suppressed.of(checked).stream().map(Finding::rule)
                .filter(rule -> !indices.containsKey(rule)).forEach(others::add));
        others.forEach(code -> indices.put(code, indices.size()));
        return Json.narrow(json -> {
            json.name("$schema").value(SCHEMA);
            json.name("version").value("2.1.0");
            json.name("runs").beginArray().beginObject();
            tool(json, call.version(), rules, others);
            invocation(json, call);
            json.name("originalUriBaseIds").beginObject();
            json.name(SarifPlaces.ROOT).beginObject();
            json.name("description");
            SarifPlaces.message(json, "The folder in which the check was called.");
            json.endObject().endObject();
            json.name("columnKind").value("utf16CodeUnits");
            json.name("defaultEncoding").value("utf-8");
            json.name("results").beginArray();
            for (Checked checked : all) {
                new SarifResults(json, checked, indices).write(suppressed.of(checked));
            }
            json.endArray();
            json.endObject().endArray();
        });
    }

    private static void tool(JsonWriter json, String version, List<RuleInfo> rules, Iterable<String> others)
            throws IOException {
        json.name("tool").beginObject().name("driver").beginObject();
        json.name("name").value("Loomwright");
        json.name("version").value(version);
        json.name("rules").beginArray();
        for (RuleInfo rule : rules) {
            rule(json, rule);
        }
        for (String code : others) {
            json.beginObject();
            json.name("id").value(code);
            json.name("shortDescription");
            SarifPlaces.message(json, "The text cannot be understood as it stands.");
            json.name("help");
            SarifPlaces.message(json, "The page " + MESSAGES + " shows how messages read.");
            json.name("properties").beginObject();
            json.name("kind").value("text");
            json.name("page").value(MESSAGES);
            json.endObject();
            json.endObject();
        }
        json.endArray();
        json.endObject().endObject();
    }

    private static void rule(JsonWriter json, RuleInfo rule) throws IOException {
        json.beginObject();
        json.name("id").value(rule.id());
        json.name("shortDescription");
        SarifPlaces.message(json, rule.title());
        json.name("help");
        SarifPlaces.message(json, "Basis: " + rule.basis() + ". The page " + rule.page()
                + " says what the rule asks, why, and what to do.");
        json.name("defaultConfiguration").beginObject();
        json.name("level").value(rule.severity().words());
        json.endObject();
        json.name("properties").beginObject();
        json.name("basis").value(rule.basis());
        json.name("kind").value(rule.kind().name().toLowerCase(Locale.ROOT));
        json.name("scope").value(rule.scope().words());
        json.name("page").value(rule.page());
        json.endObject();
        json.endObject();
    }

    private static void invocation(JsonWriter json, Call call) throws IOException {
        json.name("invocations").beginArray().beginObject();
        json.name("executionSuccessful").value(call.refusals().isEmpty());
        json.name("exitCode").value(call.exitCode());
        json.name("toolExecutionNotifications").beginArray();
        for (String refusal : call.refusals()) {
            notification(json, "error", refusal);
        }
        for (String remark : call.remarks()) {
            notification(json, "note", remark);
        }
        json.endArray();
        json.endObject().endArray();
    }

    private static void notification(JsonWriter json, String level, String words) throws IOException {
        json.beginObject();
        json.name("level").value(level);
        json.name("message");
        SarifPlaces.message(json, words);
        json.endObject();
    }
}
