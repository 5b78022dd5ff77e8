// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.app.Checked;
import org.loomwright.rules.Finding;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Severity;

/**
 * The outcome of a check in the XML in which unit tests are reported: a suite for each project, in it a case for each
 * rule, so that a build server can draw the history of a rule; and one more case for the text itself. A case fails when
 * the rule found something at or above the threshold. What else is shown stands in the output of the suite. Nothing is
 * said of time and machine but the day on which waivers were judged.
 */
public final class CheckJunit {

    /** The case of the problems of the text. */
    public static final String TEXT = "text-is-understood";

    private final Shown shown;
    private final List<RuleInfo> rules;
    private final Severity threshold;
    private final String day;
    private int suites;

    /**
     * @param rules     all rules that were asked, in order
     * @param threshold findings of this weight or more are failures
     * @param day       the day on which waivers were judged, if on any
     */
    public CheckJunit(Shown shown, List<RuleInfo> rules, Severity threshold, Optional<LocalDate> day) {
        this.shown = shown;
        this.rules = rules;
        this.threshold = threshold;
        this.day = day.orElse(LocalDate.EPOCH) + "T00:00:00";
    }

    /**
     * The document.
     *
     * @param refused names of projects that could not be checked, with the reason
     */
    public String of(List<Checked> all, Map<String, String> refused) {
        suites = 0;
        Xml xml = new Xml();
        xml.begin("testsuites");
        all.forEach(checked -> suite(checked, xml));
        refused.forEach((name, reason) -> {
            begin(name, "", 1, 0, 1, xml);
            begin(TEXT, name, xml).text("error", reason, "type", "refused", "message", reason).end("testcase");
            end("", xml);
        });
        return xml.end("testsuites").toString();
    }

    private void suite(Checked checked, Xml xml) {
        Map<String, List<Finding>> failures = new LinkedHashMap<>();
        failures.put(TEXT, new ArrayList<>());
        rules.forEach(rule -> failures.put(rule.id(), new ArrayList<>()));
        StringBuilder output = new StringBuilder();
        FindingText text = new FindingText(checked.texts(), checked.place().prefix(), Palette.PLAIN);
        for (Finding finding : shown.of(checked)) {
            if (checked.isKnown(finding)) {
                text.appendKnown(finding, output);
            } else if (finding.counts() && finding.severity().atLeast(threshold)) {
                failures.getOrDefault(finding.rule(), failures.get(TEXT)).add(finding);
            } else {
                text.append(finding, output);
            }
        }
        int failed = (int) failures.values().stream().filter(found -> !found.isEmpty()).count();
        String name = checked.place().name();
        begin(name, checked.place().prefix(), failures.size(), failed, 0, xml);
        failures.forEach((rule, found) -> {
            if (found.isEmpty()) {
                xml.empty("testcase", "name", rule, "classname", classname(name), "time", 0);
            } else {
                begin(rule, name, xml);
                failure(found, text, xml);
                xml.end("testcase");
            }
        });
        end(output.toString(), xml);
    }

    private static void failure(List<Finding> found, FindingText text, Xml xml) {
        StringBuilder words = new StringBuilder("\n");
        found.forEach(finding -> text.append(finding, words));
        Severity worst = found.stream().map(Finding::severity).max(Severity::compareTo).orElseThrow();
        String first = found.getFirst().sentence();
        xml.text("failure", words.toString(), "type", worst.words(), "message",
                found.size() == 1 ? first : found.size() + " findings; the first: " + first);
    }

    private void begin(String name, String folder, int tests, int failed, int errors, Xml xml) {
        xml.begin("testsuite", "name", classname(name), "package", folder, "id", suites++, "timestamp", day, "hostname",
                "localhost", "tests", tests, "failures", failed, "errors", errors, "time", 0);
        xml.empty("properties");
    }

    private static Xml begin(String rule, String project, Xml xml) {
        return xml.begin("testcase", "name", rule, "classname", classname(project), "time", 0);
    }

    private static void end(String output, Xml xml) {
        xml.text("system-out", output).text("system-err", "").end("testsuite");
    }

    /** Readers take what stands before the last point for a package; some want the name of the suite in its cases. */
    private static String classname(String project) {
        return "loomwright." + project.replace('.', '-');
    }
}
