// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.loomwright.app.CompareRevisions;
import org.loomwright.app.OpenProject;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.Repository;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** The page of a comparison, read by a general-purpose XML parser. */
class ComparePageTest {

    private static final String OLD = """
            platform orrin "Orrin <1200>" {
                years 1964 .. 1971
                position front
                place bulkhead
                place lamp
                place horn
            }
            harness ours "Front" of orrin fills front {
                datum bulkhead
                trunk main {
                    barrier grommet at 60 mm
                    breakout wing at 500 mm
                    breakout end at 900 mm
                }
                branch b1 from wing to lamp 250 mm
                branch b2 from end to horn 150 mm
                connector J1 at bulkhead
                connector H1 on b1
                circuit 30 "Feed" RD {
                    wire a 18 ga from J1:1 to H1:1
                }
            }
            """;

    private final SourceReader reader = Repository.reader();

    private Opened open(String text) throws Exception {
        return new OpenProject(reader, 1).open(new ProjectPlace("front", Path.of(""), "",
                List.of(Input.of("a.loom", text.getBytes(StandardCharsets.UTF_8)))), Cancel.NEVER, Progress.NONE);
    }

    private String page(String now) throws Exception {
        return ComparePage.of(CompareRevisions.whole(StandardRules.engine(), Settings.TIMELESS, false)
                .compare(open(OLD), open(now), Cancel.NEVER, Progress.NONE));
    }

    private static Document parsed(String page) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(
                page.replace("<!DOCTYPE html>", ""))));
    }

    private static List<Element> all(Document page, String name) {
        NodeList found = page.getElementsByTagName(name);
        return java.util.stream.IntStream.range(0, found.getLength()).mapToObj(i -> (Element) found.item(i)).toList();
    }

    private static String revised() {
        return OLD.replace("to lamp 250 mm", "to lamp 240 mm").replace("    branch b2 from end to horn 150 mm\n", "")
                .replace("wire a 18 ga", "wire a 16 ga").replace("breakout end at 900", "breakout tail at 900");
    }

    @Test
    void itStandsAlone() throws Exception {
        String text = page(revised());
        assertFalse(text.contains("<script") || text.contains("http") || text.contains("url(")
                || text.contains("@import") || text.contains("src="), "something from elsewhere");
        assertTrue(text.contains("@media print"), "for paper");
        assertTrue(text.contains("Orrin &lt;1200&gt;") || !text.contains("Orrin <1200>"), "escaped");
        Document page = parsed(text);
        assertEquals("en", page.getDocumentElement().getAttribute("lang"));
    }

    /** After the techniques H51, H39, H63 and G1 of the W3C for accessible pages: headings, captions, a skip link. */
    @Test
    void aScreenReaderAndAKeyboardFindTheirWay() throws Exception {
        Document page = parsed(page(revised()));
        assertEquals(1, all(page, "main").size());
        assertEquals(1, all(page, "h1").size());
        assertEquals("#changes", all(page, "a").getFirst().getAttribute("href"));
        for (Element table : all(page, "table")) {
            assertEquals(1, table.getElementsByTagName("caption").getLength());
            Element around = (Element) table.getParentNode();
            assertEquals("0", around.getAttribute("tabindex"));
            assertFalse(around.getAttribute("aria-label").isEmpty());
        }
        all(page, "th").forEach(head -> assertFalse(head.getAttribute("scope").isEmpty()));
        Set<String> ids = new HashSet<>();
        for (String name : List.of("h2", "tr", "title")) {
            all(page, name).stream().map(each -> each.getAttribute("id")).filter(id -> !id.isEmpty())
                    .forEach(id -> assertTrue(ids.add(id), id));
        }
        for (Element svg : all(page, "svg")) {
            assertTrue(ids.contains(svg.getAttribute("aria-labelledby")));
        }
        all(page, "a").forEach(link -> assertTrue(ids.contains(link.getAttribute("href").substring(1))));
    }

    @Test
    void whatIsMarkedOnTheStripSaysSoInWords() throws Exception {
        Document page = parsed(page(revised()));
        List<String> marked = all(page, "text").stream().filter(each -> each.getAttribute("class").equals("marked"))
                .map(Element::getTextContent).toList();
        assertTrue(marked.stream().anyMatch(each -> each.matches("b1 to lamp, 240 mm \u2013 change: .*")),
                marked.toString());
        assertTrue(marked.stream().anyMatch(each -> each.matches("b2 to horn, 150 mm \u2013 removed: \\d+")),
                marked.toString());
        assertTrue(marked.stream().anyMatch(each -> each.startsWith("tail 900 mm \u2013 change: ")), marked.toString());
        assertEquals(2, all(page, "svg").size(), "as it is and as it was");
    }

    @Test
    void noChangeIsSaid() throws Exception {
        String text = page(OLD);
        assertTrue(text.contains("<p>There is none.</p>"), text);
        assertEquals(0, all(parsed(text), "svg").size());
        assertNotNull(parsed(text));
    }
}
