// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.maven.plugin.surefire.log.api.NullConsoleLogger;
import org.apache.maven.plugins.surefire.report.ReportTestCase;
import org.apache.maven.plugins.surefire.report.ReportTestSuite;
import org.apache.maven.plugins.surefire.report.TestSuiteXmlParser;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.app.CheckProject;
import org.loomwright.app.Checked;
import org.loomwright.app.Repository;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The XML for unit tests, read by others: the JDK's parser, and the one with which Maven reads reports of tests. */
class JunitTest {

    private static final List<RuleInfo> RULES = StandardRules.book().infos();
    private static final Shown USUAL = new Shown(false, false, false);
    private static final Optional<LocalDate> DAY = Optional.of(LocalDate.of(2027, 6, 30));

    private static SourceReader reader;
    private static Checked orrin;

    @BeforeAll
    static void open() throws BadCall {
        reader = Repository.reader();
        orrin = check(ProjectPlace.findOne(Repository.root(), "docs/examples/orrin"));
    }

    private static Checked check(ProjectPlace place) throws BadCall {
        return new CheckProject(() -> reader, StandardRules::engine, Optional.empty())
                .check(place, Settings.TIMELESS, 1, Cancel.NEVER, Progress.NONE);
    }

    private static Checked text(String name, String text) throws BadCall {
        return check(new ProjectPlace("v1.2 \"<&>\"", Path.of("/p"), "", List.of(
                Input.of(name, text.getBytes(StandardCharsets.UTF_8)))));
    }

    private static String xml(Severity threshold, Checked... all) {
        return new CheckJunit(USUAL, RULES, threshold, DAY).of(List.of(all), Map.of());
    }

    private static Document parse(String xml) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
    }

    private static List<Element> all(Document document, String name) {
        List<Element> elements = new ArrayList<>();
        NodeList nodes = document.getElementsByTagName(name);
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    @Test
    void eachRuleIsACaseAndFindingsAtTheThresholdFail() throws Exception {
        Document document = parse(xml(Severity.NOTE, orrin));
        Element suite = all(document, "testsuite").getFirst();
        assertEquals("loomwright.orrin", suite.getAttribute("name"));
        assertEquals("2027-06-30T00:00:00", suite.getAttribute("timestamp"));
        List<Element> cases = all(document, "testcase");
        assertEquals(RULES.size() + 1, cases.size());
        assertEquals(Integer.toString(cases.size()), suite.getAttribute("tests"));
        Map<String, Integer> expected = new TreeMap<>();
        orrin.report().counting().forEach(finding -> expected.merge(finding.rule(), 1, Integer::sum));
        assertTrue(expected.size() > 1, "an example with findings");
        Map<String, Integer> found = new TreeMap<>();
        for (Element failure : all(document, "failure")) {
            String rule = ((Element) failure.getParentNode()).getAttribute("name");
            found.put(rule, failure.getTextContent().split("\\[" + rule + "]", -1).length - 1);
        }
        assertEquals(expected, found);
        assertEquals(Integer.toString(expected.size()), suite.getAttribute("failures"));
    }

    @Test
    void whatIsBelowTheThresholdIsOutputOfTheSuite() throws Exception {
        Document document = parse(xml(Severity.WARNING, orrin));
        assertEquals(0, all(document, "failure").size());
        String output = all(document, "system-out").getFirst().getTextContent();
        for (Finding finding : orrin.report().counting()) {
            assertTrue(output.contains(finding.sentence()), finding.sentence());
        }
    }

    @Test
    void controlCharactersAndAngleBracketsDoNoHarm() throws Exception {
        Checked odd = text("a<\"&\u0007.loom", "platform orrin {\n    years 1964 .. 1971\n}\n"
                + "waive w: orphan-wire on orrin because \"]]> \u0001 \ufffe \ud83d\ude97 &amp; <b>\"\n");
        String xml = xml(Severity.NOTE, odd);
        Document document = parse(xml);
        String words = all(document, "failure").getFirst().getTextContent();
        assertTrue(words.contains("]]> ") && words.contains("\ud83d\ude97 &amp; <b>"), words);
        assertEquals("loomwright.v1-2 \"<&>\"", all(document, "testsuite").getFirst().getAttribute("name"));
        assertFalse(xml.chars().anyMatch(c -> c < ' ' && c != '\n' || c == 0xfffe), xml);
        assertFalse(xml.contains("<!DOCTYPE") || xml.contains("<![CDATA["), xml);
    }

    @Test
    void problemsOfTheTextFailACaseOfTheirOwn() throws Exception {
        Document document = parse(xml(Severity.WARNING, text("p.loom", "platform {\n")));
        assertEquals(List.of(CheckJunit.TEXT), all(document, "failure").stream()
                .map(failure -> ((Element) failure.getParentNode()).getAttribute("name")).toList());
    }

    /** Source of the reader: org.apache.maven.surefire:surefire-report-parser, which knows nothing of this project. */
    @Test
    @Tag("outside")
    void theReaderOfMavenReportsSeesTheSame() throws Exception {
        String xml = new CheckJunit(USUAL, RULES, Severity.NOTE, DAY).of(List.of(orrin, text("p.loom", "platform {\n")),
                new TreeMap<>(Map.of("gone", "nothing could be read")));
        List<ReportTestSuite> suites = new TestSuiteXmlParser(new NullConsoleLogger()).parse(new InputStreamReader(
                new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)), StandardCharsets.UTF_8));
        assertEquals(3, suites.size());
        ReportTestSuite first = suites.getFirst();
        assertEquals(RULES.size() + 1, first.getNumberOfTests());
        assertEquals(RULES.size() + 1, first.getTestCases().size());
        assertEquals(orrin.report().counting().stream().map(Finding::rule).distinct().sorted().toList(),
                first.getTestCases().stream().filter(ReportTestCase::hasFailure).map(ReportTestCase::getName).sorted()
                        .toList());
        assertEquals("loomwright.orrin", first.getTestCases().getFirst().getFullClassName());
        assertEquals(1, suites.get(1).getNumberOfFailures());
        assertEquals(1, suites.get(2).getNumberOfErrors());
        assertTrue(suites.get(2).getTestCases().getFirst().hasError());
    }
}
