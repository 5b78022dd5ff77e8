// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitReport;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** Lengths and sizes of the Orrin's harnesses against sums done by hand. */
class OrrinByHandTest {

    private final EditedExample orrin = new EditedExample("orrin");

    /**
     * The sums behind {@code orrin-by-hand.csv}:
     * <ul>
     * <li>fuel sender, coupe: s = 82.0 in = 2082.8, ours at 2110: 27.2 back; K = 17.5 in = 444.5; a = 5 + 6.35 + 6.35 =
     *     17.7; least length 27.2 + 444.5 + 17.7 = 489.4, made 500
     * <li>tailgate joint, estate: s = 100 1/2 in = 2552.7, ours at 2490: 62.7; K = 20 in = 508; a = 5 + 6.35 + 19.05 =
     *     30.4 (scaled, 3/4 in); least 601.1, made 615
     * <li>number plate lamp, 1970: s = 2945, ours at 2910: 35; K = 320 of path + 40 loop; a = 5 + 5 + 5; least 410,
     *     made 420
     * <li>right ground stud, coupe: s = 130.5 in = 3314.7 within 3/8 in, ours at 3385: 70.3; K = 5.5 in = 139.7;
     *     a = 5 + 9.525 + 6.35 = 20.875; least 230.875, made 245
     * <li>left tail lamp, saloon 1964: s = 98 in = 2489.2, ours at 2490: 0.8; K = 10 1/2 in = 266.7; a = 17.7; made
     *     380: 380 + 25 - 0.8 - 266.7 + 17.7 = 155.2 to dress back
     * </ul>
     */
    @Test
    void marginsAndExcessesAreThoseOfTheSheets() throws BadCall, IOException {
        FitReport rear = fit("rear");
        List<CSVRecord> rows = CsvTable.read("orrin-by-hand.csv");
        assertEquals(5, rows.size());
        for (CSVRecord row : rows) {
            FitCell.Figures figures = figures(rear, row.get("place"), row.get("drawing"));
            String where = row.get("place") + " " + row.get("drawing");
            assertEquals(Double.parseDouble(row.get("margin")), figures.margin().toMillimetres(), 1e-9, where);
            assertEquals(Double.parseDouble(row.get("excess")), figures.excess().toMillimetres(), 1e-9, where);
        }
    }

    private FitReport fit(String harness) throws BadCall {
        return new JudgeFit(new ChainJudge(), FitDefaults.usual()).judge(orrin.open().project(), Cancel.NEVER,
                Progress.NONE).stream()
                .filter(judged -> judged.harness().name().equals(harness)).findFirst().orElseThrow().report();
    }

    private static FitCell.Figures figures(FitReport report, String place, String drawing) {
        return report.cells().stream()
                .filter(cell -> report.problem().rows().get(cell.row()).place().equals(place))
                .filter(cell -> report.problem().columns().get(cell.column()).drawing().equals(drawing))
                .map(FitCell::figures).flatMap(Optional::stream).findFirst().orElseThrow();
    }

    /**
     * The least station of the breakout in the middle of the boot. The estate's trailer socket, 24 in = 609.6 within
     * 17.7, hangs on 745 mm from 118 3/4 in = 3016.25: 745 - 609.6 - 17.7 = 117.7 may run along the trunk, so not
     * before 2898.55. The plate lamp of 1970, 320 + 40 within 15, hangs on 420 mm from 2945: 45 may run along the
     * trunk, so not before 2900.
     */
    @Test
    void theLeastStationOfABreakout() throws BadCall {
        assertEquals(List.of(), misses("breakout bootMiddle at 2910 mm", "breakout bootMiddle at 2900 mm"));
        assertEquals(List.of("branch bPlate is 5 mm too short for plateBar as rear70 has it",
                "branch bTow is 3.6 mm too short for towPlate as rearEstate64 has it"),
                misses("breakout bootMiddle at 2910 mm", "breakout bootMiddle at 2895 mm"));
    }

    /**
     * The least length of the left tail lamp's branch: the coupe's breakout at 95.5 in = 2425.7 and ours at 2490 are
     * 64.3 apart, its lead has 11.5 in = 292.1, the tolerances are 17.7: 374.1.
     */
    @Test
    void theLeastLengthOfABranch() throws BadCall {
        assertEquals(List.of(), misses("tailLeft 380 mm", "tailLeft 374.1 mm"));
        assertEquals(List.of("branch bTailL is 0.1 mm too short for tailLeft as rearCoupe has it"),
                misses("tailLeft 380 mm", "tailLeft 374 mm"));
    }

    private List<String> misses(String text, String instead) throws BadCall {
        return check(orrin.with("rear-harness.loom", text, instead), "place-not-reached").stream()
                .map(Finding::sentence).toList();
    }

    private static List<Finding> check(EditedExample example, String rule) throws BadCall {
        return StandardRules.engine().check(example.open().project(), Settings.TIMELESS, Cancel.NEVER, Progress.NONE)
                .of(rule).stream().filter(Finding::counts).toList();
    }

    @Test
    @Tag("outside") // 33 CFR 183.425 Table 5, see orrin-gauges.csv
    void theChosenGaugeBearsItsFuseAndTheNextThinnerDoesNot() throws BadCall, IOException {
        List<CSVRecord> rows = CsvTable.read("orrin-gauges.csv");
        assertEquals(2, rows.size());
        for (CSVRecord row : rows) {
            String wire = row.get("harness") + ":" + row.get("wire");
            double needed = number(row, "needed");
            double factors = number(row, "ambient") * number(row, "bundle");
            double chosen = number(row, "ampere") * number(row, "share") * factors;
            double thinner = number(row, "ampereThinner") * number(row, "shareThinner") * factors;
            assertTrue(chosen >= needed && thinner < needed, () -> wire + ": " + chosen + ", " + thinner);
            assertEquals(List.of(), check(orrin, "fuse-exceeds-wire").stream().map(Finding::element).toList());
            List<Finding> found = check(orrin.with(file(row), text(row, "size"), text(row, "thinner")),
                    "fuse-exceeds-wire");
            assertEquals(List.of(wire), found.stream().map(Finding::element).toList());
            String derivation = found.getFirst().derivation().getFirst();
            Matcher result = Pattern.compile(" = ([0-9.]+) A;").matcher(derivation);
            assertTrue(result.find(), derivation);
            assertEquals(thinner, Double.parseDouble(result.group(1)), 0.06, derivation);
        }
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    private static String file(CSVRecord row) {
        return row.get("harness").equals("front") ? "front-harness.loom" : "engine-lead.loom";
    }

    private static String text(CSVRecord row, String column) {
        return row.get("harness").equals("front") ? "wire a " + row.get(column) + " from FB:aux"
                : "wire b " + row.get(column) + " from F1:load";
    }

    /**
     * Each wire to the trailer socket serves what ISO 1724 puts on its contact, with at least the section of the
     * standard's cable. The contacts have the names of DIN 72552. Contact 2 (54g) is a rear fog lamp's, which no Orrin
     * has.
     */
    @ParameterizedTest
    @CsvSource({"1,L,Left turn", "3,31,'Ground, right'", "4,R,Right turn", "5,58R,Tail and number plate lamps",
            "6,54,Stop lamps", "7,58L,Tail and number plate lamps"})
    @Tag("outside") // ISO 1724 as reprinted, see iso-1724.csv
    void theTrailerSocketIsWiredAsTheStandardSays(String pin, String contact, String title)
            throws BadCall, IOException {
        double section = CsvTable.read("iso-1724.csv").stream().filter(row -> row.get("pin").equals(pin))
                .mapToDouble(row -> number(row, "mm2")).findFirst().orElseThrow();
        List<WireView> wires = orrin.open().project().wiring("rear").orElseThrow().wires().stream()
                .filter(wire -> Stream.concat(wire.from().stream(), wire.to().stream()).map(Case::value)
                        .anyMatch(node -> node.element().equals("W1") && node.pin().equals(contact))).toList();
        assertEquals(1, wires.size());
        assertEquals(title, wires.getFirst().circuit().title());
        assertTrue(wires.getFirst().sizes().stream()
                .allMatch(size -> size.value().areaMm2() >= section), contact);
    }
}
