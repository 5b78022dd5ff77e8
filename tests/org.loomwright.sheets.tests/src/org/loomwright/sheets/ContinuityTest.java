// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.sheets.content.Continuity;
import org.loomwright.sheets.page.Paper;

/** The continuity chart, held against published pin tables and resistances. */
class ContinuityTest {

    private static final SheetChoice CHART = SheetChoice.of(Paper.A4, SheetKind.CONTINUITY);
    private static Examples examples;
    private static Opened trailer;

    @TempDir
    private Path folder;

    @BeforeAll
    static void open() throws Exception {
        examples = new Examples();
        trailer = examples.example("trailer");
    }

    /** Functions by pin of one of the published tables, in words that both share. */
    private static Map<String, String> pins(String file) throws Exception {
        try (InputStream in = ContinuityTest.class.getResourceAsStream(file)) {
            Map<String, String> pins = new TreeMap<>(new NaturalOrder());
            new String(in.readAllBytes(), StandardCharsets.UTF_8).lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("pin")).forEach(line -> {
                        String function = line.substring(line.indexOf(',') + 1).replace("\"", "").split(",")[0];
                        pins.put(line.substring(0, line.indexOf(',')),
                                function.replaceAll(" for .*", "").replace("ground", "return"));
                    });
            return pins;
        }
    }

    /** ISO 11446 and ISO 1724 as makers of plugs reprint them: a pin of one goes to the pin of the same function. */
    @Test
    @Tag("outside")
    void theAdaptorJoinsThePinsOfOneFunctionAndNoOthers() throws Exception {
        Map<String, String> car = pins("iso-11446.csv");
        Map<String, String> load = pins("iso-1724.csv");
        Map<String, String> expected = new TreeMap<>(new NaturalOrder());
        load.forEach((pin, function) -> car.entrySet().stream().filter(each -> each.getValue().equals(function))
                .findFirst().ifPresent(each -> expected.put("A13:" + each.getKey(), "A7:" + pin)));
        assertEquals(7, expected.size(), car + " " + load);
        Map<String, Path> files = Examples.write(folder, examples.files(trailer, "adaptorKit", "", CHART));
        Map<String, String> chart = new TreeMap<>(new NaturalOrder());
        List<String> records = Outside.records(files.get("adaptor13to7-continuity.csv"));
        for (String record : records.subList(1, records.size())) {
            String[] cells = record.split("\t");
            boolean back = cells[0].startsWith("A7:");
            chart.put(cells[back ? 1 : 0], cells[back ? 0 : 1]);
        }
        assertEquals(expected, chart);
    }

    /**
     * Greatest resistance at 20 C of flexible conductors, IEC 60228:2004 class 5 (makers' reprints): 13.3 mohm/m of
     * 1.5 mm2, 7.98 mohm/m of 2.5 mm2. That of the plain section lies below it, by less than a fifth.
     */
    @Test
    @Tag("outside")
    void expectedOhmsLieBelowTheGreatestOfTheStandardAndNearIt() throws Exception {
        Continuity chart = Continuity.of(examples.order(trailer, "adaptorKit", "").harnesses().getFirst());
        double metres = 0.43; // the branch of 400 mm and two terminations of 15 mm
        for (Continuity.Check check : chart.checks()) {
            double most = (check.wires().getFirst().equals("3a") ? 7.98e-3 : 13.3e-3) * metres;
            double ohms = check.ohms().orElseThrow();
            assertTrue(ohms < most && ohms > 0.8 * most, check.from().label() + " " + ohms + " against " + most);
        }
        assertEquals(7, chart.checks().size());
    }

    @Test
    void neighboursInAHousingThatMustNotConductAreListedUnlessTheyDo() throws Exception {
        Opened opened = examples.text(folder, """
                platform p "P" {
                    place a
                    place b
                }
                catalogue c {
                    housing three "Housing, 3-way" {
                        cavities 1, 2, 3
                    }
                }
                harness h "Harness" of p {
                    datum a
                    branch lead from a to b 300 mm
                    connector A at a is three
                    connector B at b is three
                    circuit 1 RD {
                        splice S at lead
                        wire a 1 mm2 from A:1 to S
                        wire b 1 mm2 from S to B:1
                        wire c 1 mm2 from S to B:2
                    }
                    circuit 2 BK {
                        wire a 1 mm2 from A:3 to B:3
                    }
                }
                """);
        Continuity chart = Continuity.of(examples.order(opened, "h", "").harnesses().getFirst());
        assertEquals(List.of("A:1 B:1", "A:1 B:2", "A:3 B:3"), chart.checks().stream()
                .map(each -> each.from().label() + " " + each.to().label()).toList());
        assertEquals(List.of("1a", "1b"), chart.checks().getFirst().wires());
        assertEquals(List.of("A:1 A:3", "B:2 B:3"), chart.openings().stream()
                .map(each -> each.one().label() + " " + each.other().label()).toList());
    }
}
