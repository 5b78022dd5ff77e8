// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.loomwright.app.DraftAdaptor.Drafted;
import org.loomwright.app.print.AdaptorText;
import org.loomwright.compare.draft.AdaptorDraft;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.Formatter;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** Leads between connectors of two years: the trailer plugs of ISO 11446 and ISO 1724 as a platform of two drawings. */
class DraftAdaptorTest {

    private static Drafted found(Project project) throws BadCall {
        return new DraftAdaptor(Repository.reader()).draft(project, "trailer13:P13", "trailer7:P7", "found",
                Cancel.NEVER);
    }

    /** What a pin is for, in words that both tables share: {@code left tail, marker, plate} is {@code left tail}. */
    private static Map<String, String> functions(String table) throws IOException {
        Map<String, String> functions = new LinkedHashMap<>();
        for (CSVRecord row : CsvTable.read(table)) {
            String function = row.get("function").split(",")[0];
            functions.put(row.get("pin"), function.equals("ground") ? "return for 1-8" : function);
        }
        return functions;
    }

    private static Map<String, String> joined(Drafted drafted) {
        Map<String, String> joined = new TreeMap<>();
        drafted.draft().joints().forEach(each -> assertEquals(null, joined.put(each.one(), each.other())));
        return joined;
    }

    /** Sources of the two tables: the heads of {@code iso-11446.csv} and {@code iso-1724.csv}. */
    @Test
    @Tag("outside")
    void theAdaptorJoinsExactlyThePublishedFunctions() throws BadCall, IOException {
        Map<String, String> expected = new TreeMap<>();
        Map<String, String> seven = functions("iso-1724.csv");
        functions("iso-11446.csv").forEach((pin, function) -> seven.forEach((other, same) -> {
            if (function.equals(same)) {
                expected.put(pin, other);
            }
        }));
        assertEquals(7, expected.size());
        assertEquals(expected, joined(found(new EditedExample("trailer").open().project())));
    }

    /** The returns of the feeds, 11 and 13, have cores of their own: nothing of the 7-pin plug is joined to them. */
    @Test
    @Tag("outside")
    void theReturnsStayApart() throws BadCall {
        Drafted drafted = found(new EditedExample("trailer").open().project());
        assertEquals(List.of("P13:8 of trailer13, Reversing", "P13:9 of trailer13, Permanent feed",
                "P13:10 of trailer13, Switched feed", "P13:11 of trailer13, Return for 10",
                "P13:13 of trailer13, Return for 9"), drafted.draft().open());
        List<String> others = new ArrayList<>(joined(drafted).values());
        assertEquals(others.stream().distinct().toList(), others);
        assertTrue(AdaptorText.text(drafted).startsWith("found: 7 ways"));
        assertTrue(AdaptorText.json(drafted).contains("\"leftOpen\""));
    }

    /** Functions are joined, not numbers: with two pins of the trailer exchanged, the lead crosses over. */
    @Test
    void pinsThatChangedPlacesAreCrossed() throws BadCall {
        Drafted drafted = found(new EditedExample("trailer")
                .with("trailer-7pin.loom", "from P7:1 to lampL:turn", "from P7:4 to lampL:turn")
                .with("trailer-7pin.loom", "from P7:4 to lampR:turn", "from P7:1 to lampR:turn").open().project());
        assertEquals("4", joined(drafted).get("1"));
        assertEquals("1", joined(drafted).get("4"));
        assertEquals("3", joined(drafted).get("3"));
    }

    /** The lead has the sections of the standards, and the rules object to nothing but what is left to choose. */
    @Test
    void theLeadIsFormattedSource() throws BadCall {
        Project project = new EditedExample("trailer").open().project();
        Drafted drafted = found(project);
        assertEquals(Formatter.format(drafted.source().text()), drafted.source().text());
        AdaptorDraft.Joint back = drafted.draft().joints().get(2);
        assertEquals(List.of("3", "3", "2.5 mm2", "WH"), List.of(back.one(), back.other(), back.size(), back.colour()));
        List<Source> sources = new ArrayList<>(project.everySource());
        sources.add(drafted.source());
        assertEquals(List.of("length-unknown", "currents-not-known"), StandardRules.engine().check(
                Project.link(sources), Settings.TIMELESS, Cancel.NEVER, Progress.NONE).findings().stream()
                .filter(each -> each.place().span().file().equals("found.loom")).map(each -> each.rule()).distinct()
                .toList(), "nobody has said yet how long it is");
    }

    @Test
    void whatIsNotThereIsNamed() throws BadCall {
        Project project = new EditedExample("trailer").open().project();
        DraftAdaptor adaptor = new DraftAdaptor(Repository.reader());
        for (String[] call : List.of(new String[] {"trailer13", "trailer7:P7", "--adaptor takes"},
                new String[] {"trailer14:P13", "trailer7:P7", "the project has no drawing trailer14"},
                new String[] {"trailer13:P14", "trailer7:P7", "trailer13 has no connector P14"},
                new String[] {"trailer13:P13", "trailer13:P13", "an adaptor joins two drawings"})) {
            assertTrue(assertThrows(BadCall.class, () -> adaptor.draft(project, call[0], call[1], "found",
                    Cancel.NEVER)).getMessage().startsWith(call[2]), call[2]);
        }
    }
}
