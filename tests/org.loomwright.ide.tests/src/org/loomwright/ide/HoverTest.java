// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.ide.hover.Hover;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Unit;

/** What is told of a word is what was computed. */
class HoverTest {

    private static final Bench ORRIN = Bench.orrin();

    private static List<String> hover(String file, String piece, int plus) {
        Optional<Hover> hover = Services.hover(ORRIN.moment(), file, ORRIN.offset(file, piece, plus), Cancel.NEVER);
        return hover.map(each -> each.text().lines().toList()).orElse(List.of());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "front-1964.loom    | wire a 14 ga from J1:1 | 5  | wire 12a of front64",
        "front-1964.loom    | wire a 14 ga from J1:1 | 1  | cut length: 1005 mm -0 mm / +50 mm",
        "front-1964.loom    | wire a 14 ga from J1:1 | 5  | vehicles: year < late67 and (saloon or estate) (11,520 of",
        "front-1964.loom    | wire a 14 ga from J1:1 | 8  | cross-section: 1.88 mm2",
        "front-1964.loom    | year <= 1967           | 6  | this condition: year < late67 and (saloon or estate)",
        "front-1964.loom    | bulkhead12Plug         | 2  | housing bulkhead12Plug, Bulkhead plug, 12-way",
        "front-1964.loom    | J1:1                   | 3  | cavity 1 of bulkhead12Plug",
        "front-1964.loom    | J1:1                   | 0  | cavity 7: fog",
        "front-1964.loom    | BU/RD                  | 1  | colour BU, blue",
        "front-1964.loom    | leftWing to headlamp   | 14 | fit in frontCoupe: fits, margin 11.2 mm, excess 71.6 mm",
        "front-harness.loom | branch bHeadL          | 8  | fit in frontCoupe: fits, margin 11.2 mm, excess 71.6 mm",
        "front-harness.loom | breakout leftWing      | 10 | bound by: cornerLeft in front70",
        "front-harness.loom | harness front          | 10 | fit: fits the drawings as transcribed",
        "orrin.loom         | upgrade halogen        | 10 | vehicles: 14,640 of 43,920 vehicles",
        "orrin.loom         | platform orrin         | 10 | vehicles: all 43,920 vehicles",
        "orrin.loom         | zone engineBay         | 6  | ambient: 80 C",
        "orrin.loom         | group body             | 7  | one of: saloon, coupe, estate"})
    void tells(String file, String piece, int plus, String row) {
        List<String> rows = hover(file, piece, plus);
        assertTrue(rows.stream().anyMatch(each -> each.startsWith(row)), () -> String.join("\n", rows));
    }

    /**
     * 33 CFR 183.425 Table 5: 14 AWG with insulation of 80 C carries 25 A outside engine spaces at 30 C; seven to 24
     * conductors together carry half of it.
     */
    @Test
    @Tag("outside")
    void ampacityStartsFromThePublishedTable() {
        String row = hover("front-1964.loom", "wire a 14 ga from J1:1", 5).stream()
                .filter(each -> each.startsWith("may carry: ")).findFirst().orElseThrow();
        assertTrue(row.contains("25 A for 14 AWG, 80 C"), row);
        assertTrue(row.contains("x 0.50 (7-24 wires)"), row);
        assertTrue(row.contains("33 CFR 183.425 Table 5"), row);
    }

    @Test
    void lengthsAndTablesAreShownAsLiked() {
        String file = "front-harness.loom";
        Shown liked = new Shown(Unit.IN, true);
        String fit = Services.hover(ORRIN.moment(), file, ORRIN.offset(file, "branch bHeadL", 8), liked, Cancel.NEVER)
                .orElseThrow().text();
        assertTrue(fit.contains("fits, margin 0.44 in, excess 2.82 in"), fit);
        int wire = ORRIN.offset(file, "wire a 10 ga from K1:87", 5);
        String both = Services.hover(ORRIN.moment(), file, wire, liked, Cancel.NEVER).orElseThrow().text();
        assertTrue(both.contains("33 CFR 183.425 Table 5"), both);
        assertTrue(both.contains("may carry: for comparison ") && both.contains("FAA AC 43.13-1B Table 11-9"), both);
        String judged = Services.hover(ORRIN.moment(), file, wire, Cancel.NEVER).orElseThrow().text();
        assertEquals(both.lines().filter(each -> !each.contains("for comparison"))
                .map(each -> each.replaceFirst(" \\([0-9.]+ in\\)", "")).toList(), judged.lines().toList());
    }

    @Test
    void whatHasNoMeaningHasNoHover() {
        assertEquals(List.of(), hover("front-1964.loom", "// Front lighting", 4));
        assertEquals(Optional.empty(), Services.hover(Bench.of("a.loom", "").moment(), "a.loom", 0, Cancel.NEVER));
    }

    /** No word of the example makes a hover fail, and each has a title. */
    @Test
    void everyWordCanBeAskedAbout() {
        for (String file : List.of("front-harness.loom", "orrin.loom", "kit.loom", "catalogue.loom")) {
            var lines = ORRIN.moment().words(file);
            long told = lines.lines().stream().flatMap(line -> line.words().stream()).limit(1_500)
                    .flatMap(word -> Stream.of(Services.hover(ORRIN.moment(), file, word.offset(), Cancel.NEVER)))
                    .filter(hover -> hover.filter(each -> each.title().isBlank()).isEmpty())
                    .filter(Optional::isPresent).count();
            assertTrue(told > 10, file + ": " + told);
        }
    }
}
