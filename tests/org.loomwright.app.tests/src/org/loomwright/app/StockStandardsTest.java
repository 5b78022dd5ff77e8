// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.loomwright.app.load.StockShelf;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.Part.WordKind;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Dimension;
import org.loomwright.quantity.SizeSystem;
import org.loomwright.stock.Stock;

/**
 * The stock against published figures. They stand, with sources, in the {@code stock-*.csv} files beside this test;
 * what those files have from memory is compared as well, and the stock must then say so, but it does not count as a
 * check against the outside.
 */
class StockStandardsTest {

    private static final double CIRCULAR_MIL_MM2 = 5.067075e-4;

    private final Map<String, Part> parts = parts();

    private static Map<String, Part> parts() {
        SourceReader reader = Repository.reader();
        return Project.link(new StockShelf(reader).take(Stock.shipped().names())).parts();
    }

    private static List<CSVRecord> table(String name) {
        CSVFormat format = CSVFormat.RFC4180.builder().setCommentMarker('#').setHeader().setSkipHeaderRecord(true)
                .get();
        try (BufferedReader text = new BufferedReader(new InputStreamReader(
                StockStandardsTest.class.getResourceAsStream(name), StandardCharsets.UTF_8));
                CSVParser parser = CSVParser.builder().setReader(text).setFormat(format).get()) {
            return parser.getRecords();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    private static Map<String, Double> table(String name, String key, String value) {
        return table(name).stream().collect(Collectors.toMap(row -> row.get(key), row -> number(row, value)));
    }

    private List<Part.Size> sizes(SizeSystem system) {
        return parts.values().stream().flatMap(part -> part.sizes().stream())
                .filter(size -> size.size().system() == system).toList();
    }

    private double figure(String part, FigureKind kind) {
        return parts.get(part).figure(kind).orElseThrow().from().si();
    }

    @Test
    @Tag("outside")
    void gaugeSizesHaveTheLeastSectionOfSaeAndItsResistance() {
        Map<String, Double> mils = table("stock-sae.csv", "size", "mils");
        Map<String, Double> mohm = table("stock-sae.csv", "size", "mohm");
        int checked = 0;
        for (Part.Size size : sizes(SizeSystem.SAE)) {
            String name = size.size().size();
            if (!mils.containsKey(name)) {
                assertTrue(size.size().fromMemory(), name);
                continue;
            }
            assertEquals(mils.get(name) * CIRCULAR_MIL_MM2, size.size().areaMm2(), 1e-4 * size.size().areaMm2(), name);
            assertEquals(mohm.get(name), 1000 * size.size().ohmPerMetre20(), 5e-4 * mohm.get(name), name);
            checked++;
        }
        assertTrue(checked > 40, "rows: " + checked);
    }

    @Test
    @Tag("outside")
    void gaugeSizesAreThreeToElevenPercentUnderAwg() {
        Map<String, Double> awg = table("stock-awg.csv", "awg", "mils");
        for (Part.Size size : sizes(SizeSystem.SAE)) {
            Optional.ofNullable(awg.get(size.size().size())).ifPresent(mils -> {
                double share = size.size().areaMm2() / (mils * CIRCULAR_MIL_MM2);
                assertTrue(share > 0.89 && share < 0.975, size.size() + ": " + share);
            });
        }
    }

    /** A conductor of the nominal section has less than the greatest resistance, by less than a size. */
    @Test
    @Tag("outside")
    void metricSizesKeepTheGreatestResistanceOfIec60228() {
        Map<String, Double> most = table("stock-iec60228.csv", "mm2", "mohm");
        int checked = 0;
        for (Part.Size size : sizes(SizeSystem.METRIC)) {
            Double limit = most.get(size.size().size());
            if (limit != null) {
                double share = 1000 * size.size().ohmPerMetre20() / limit;
                assertTrue(share <= 1 && share > 0.85, size.size() + ": " + share);
                checked++;
            }
        }
        assertEquals(3 * most.size(), checked, "three metric cables have all sizes of the table");
    }

    /** 0.023 in is the wall of general-purpose wire, 20 to 14 gauge, as a wire vendor's page on SAE J1128 gives it. */
    @Test
    @Tag("outside")
    void noCableIsThinnerThanItsCopperAndTwoWalls() {
        for (Part part : parts.values()) {
            for (Part.Size size : part.sizes()) {
                double diameter = size.diameter().map(each -> each.si() * 1000).orElse(Double.POSITIVE_INFINITY);
                assertTrue(diameter > size.size().diameterMm() * 1.02, part.name() + " " + size.size());
                boolean general = part.name().text().equals("generalWall125") || part.name().text().equals("pvc80");
                if (general && List.of("20", "18", "16", "14").contains(size.size().size())) {
                    assertTrue(diameter >= size.size().diameterMm() + 2 * 0.023 * 25.4, size.size() + ": " + diameter);
                }
                assertTrue(size.diameter().isEmpty() || size.basis().contains("from memory"),
                        "no diameter was read in a standard: " + part.name() + " " + size.size());
            }
        }
    }

    @Test
    @Tag("outside")
    void bladeFusesAreThoseOfIso8820() {
        Map<String, CSVRecord> types = table("stock-fuses.csv").stream()
                .collect(Collectors.toMap(row -> row.get("family"), row -> row));
        Map<String, Integer> seen = new HashMap<>();
        for (Part part : parts.values()) {
            String family = part.word(WordKind.FAMILY).orElse("");
            CSVRecord type = types.get(family);
            if (part.kind() == Part.Kind.FUSE && type != null) {
                seen.merge(family, 1, Integer::sum);
                String name = part.name().text();
                assertEquals(number(type, "volts"), figure(name, FigureKind.VOLTAGE), name);
                assertEquals(number(type, "breaking"), figure(name, FigureKind.BREAKING), name);
                assertTrue(figure(name, FigureKind.RATING) <= number(type, "most"), name);
                assertEquals("continuous", part.word(WordKind.BASIS).orElse(""), name);
            }
        }
        assertEquals(Map.of("bladeC", 13, "bladeE", 9, "bladeF", 10), seen);
    }

    @Test
    @Tag("outside")
    void bladeFusesHaveTheirColours() {
        for (CSVRecord row : table("stock-fuse-colours.csv")) {
            for (String series : List.of("blade", "miniBlade")) {
                Part part = parts.get(series + row.get("rating").replace('.', '_'));
                if (part != null) {
                    assertTrue(part.title().endsWith(row.get("rating") + " A, " + row.get("colour")), part.title());
                    assertEquals(number(row, "rating"), figure(part.name().text(), FigureKind.RATING));
                }
            }
        }
    }

    @Test
    void theNameOfAFuseSaysItsRating() {
        for (Part part : parts.values()) {
            if (part.kind() == Part.Kind.FUSE || part.kind() == Part.Kind.BREAKER) {
                String rating = part.figure(FigureKind.RATING).orElseThrow().from().written();
                String digits = part.name().text().replaceAll("^.*?([0-9_]+)$", "$1").replace('_', '.');
                assertEquals(digits + " A", rating, part.name().text());
                assertTrue(part.title().contains(rating), part.title());
            }
        }
    }

    @Test
    @Tag("outside")
    void linkLeadsProtectWireFourGaugeNumbersLarger() {
        List<CSVRecord> rows = table("stock-links.csv");
        for (CSVRecord row : rows) {
            Part part = parts.get("linkLead" + row.get("link"));
            assertEquals(row.get("link"), part.sizes().getFirst().size().size());
            assertTrue(part.title().endsWith("for " + row.get("wire") + " ga wire and larger"), part.title());
        }
        assertEquals(rows.size(), parts.keySet().stream().filter(name -> name.startsWith("linkLead")).count());
    }

    @Test
    @Tag("outside")
    void lampsDrawWhatStandardsThatWereReadSay() {
        assertEquals(3, lamps("read"));
    }

    @Test
    void lampsFromMemorySaySo() {
        assertTrue(lamps("memory") > 20);
    }

    private int lamps(String how) {
        int checked = 0;
        for (CSVRecord row : table("stock-lamps.csv")) {
            if (row.get("how").equals(how)) {
                Part part = parts.get(row.get("part"));
                boolean memory = sources(part).stream().anyMatch(source -> source.contains("from memory"));
                assertEquals(how.equals("memory"), memory, part.name().text());
                assertEquals(number(row, "volts"), figure(row.get("part"), FigureKind.VOLTAGE), part.name().text());
                List<Double> ohms = part.joins().stream().map(join -> join.through().orElseThrow().si()).toList();
                double amps = ohms.isEmpty() ? amps(part) : number(row, "volts") / ohms.getFirst();
                assertEquals(number(row, "amps"), amps, 0.01 * amps, part.name().text());
                if (!row.get("amps2").isEmpty()) {
                    assertEquals(number(row, "amps2"), number(row, "volts2") / ohms.get(1), 0.01, part.name().text());
                }
                checked++;
            }
        }
        return checked;
    }

    private static double amps(Part part) {
        return part.figure(FigureKind.CURRENT).map(figure -> figure.from().si()).orElseGet(() ->
                part.figure(FigureKind.POWER).orElseThrow().from().si()
                        / part.figure(FigureKind.VOLTAGE).orElseThrow().from().si());
    }

    private static List<String> sources(Part part) {
        List<String> sources = new ArrayList<>(part.figures().stream().map(fact -> fact.value().basis()).toList());
        part.word(WordKind.SOURCE).ifPresent(sources::add);
        return sources;
    }

    @Test
    @Tag("outside")
    void trailerHousingsHaveThePinsOfTheirStandards() {
        pins("trailer13Socket", "iso-11446.csv", 13);
        pins("trailer7Socket", "iso-1724.csv", 7);
        assertEquals(parts.get("trailer13Socket").pins(), parts.get("trailer13Plug").pins());
    }

    private void pins(String housing, String standard, int ways) {
        Map<String, String> titles = parts.get(housing).pins().stream()
                .collect(Collectors.toMap(pin -> pin.name().text(), Part.Pin::title));
        assertEquals(ways, titles.size());
        for (CSVRecord row : table(standard)) {
            String function = row.get("function").replace("indicator", "turn").replace("ground", "return")
                    .replace("permanent +", "permanent feed").replace("switched +", "switched feed");
            String first = function.split("[/,-]")[0].strip();
            assertTrue(titles.get(row.get("pin")).startsWith(first) || row.get("function").startsWith("reserved"),
                    row.get("pin") + ": " + titles.get(row.get("pin")) + ", not " + function);
        }
    }

    @Test
    void bladesCarryWhatTheyAreRememberedToCarry() {
        for (CSVRecord row : table("stock-terminals.csv")) {
            for (String end : List.of("Receptacle", "Tab")) {
                Part part = parts.get(row.get("part") + end);
                double rating = figure(part.name().text(), FigureKind.RATING);
                assertTrue(rating >= number(row, "least") && rating <= number(row, "most"), part.name().text());
                assertEquals(row.get("mohm"), part.figure(FigureKind.RESISTANCE)
                        .map(figure -> figure.from().number().replaceAll("\\.0$", "")).orElse(""));
                assertTrue(sources(part).stream().allMatch(source -> source.contains("from memory")));
            }
        }
    }

    /** Terminals, seals and sizes are the figures on which a verdict could come to rest. */
    @Test
    void rangesThatWereNotReadSaySo() {
        for (Part part : parts.values()) {
            part.figures().stream().map(fact -> fact.value())
                    .filter(figure -> figure.kind() == FigureKind.TAKES || part.kind() == Part.Kind.SEAL)
                    .forEach(figure -> assertTrue(figure.basis().contains("from memory"), part.name().text()));
            assertFalse(part.figure(FigureKind.SHORT_TIME).isPresent(), "a limit from memory would decide alone");
            assertTrue(part.joins().stream().flatMap(join -> join.through().stream())
                    .allMatch(through -> through.unit().dimension() == Dimension.RESISTANCE));
        }
    }
}
