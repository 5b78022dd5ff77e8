// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.app.print.MatrixCsv;
import org.loomwright.app.print.MatrixPage;
import org.loomwright.app.print.MatrixText;
import org.loomwright.app.print.Palette;
import org.loomwright.compare.matrix.Cell;
import org.loomwright.compare.matrix.Column;
import org.loomwright.compare.matrix.Matrix;
import org.loomwright.compare.matrix.Row;
import org.loomwright.compare.matrix.Section;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The example's drawings side by side; what is expected was read off the drawings by hand. */
class LayMatrixTest {

    private static final Set<Section> ALL = EnumSet.allOf(Section.class);

    private final Project orrin = orrin();

    private static Project orrin() {
        try {
            return Repository.example("orrin", Repository.reader()).project();
        } catch (BadCall e) {
            throw new AssertionError(e);
        }
    }

    private Matrix front() throws BadCall {
        return LayMatrix.position(orrin, "frontLighting", Cancel.NEVER);
    }

    @Test
    void theDrawingsOfAPositionStandInTheOrderOfTheirFirstYears() throws BadCall {
        assertEquals(List.of("wholeCar", "dash", "engineBayWiring", "frontLighting", "rearBody"),
                LayMatrix.all(orrin, Cancel.NEVER).stream().map(Matrix::name).toList());
        assertEquals(List.of("front64", "frontCoupe", "front67", "front70"),
                front().columns().stream().map(Column::name).toList());
    }

    /** Numbers of 1970 follow another standard, and 30 means something else there. */
    @ParameterizedTest
    @CsvSource({
        "frontLighting, Main feed,     number, 1 | 1 | 1 | 30",
        "frontLighting, Horn,          number, 30 | 30 | 30 | 71",
        "frontLighting, Dipped beam,   number, 12 | 12 | 12 | 56b",
        "frontLighting, Dipped beam,   colour, BU/RD | BU/RD | BU/RD | YE",
        "frontLighting, Left turn,     colour, GN/RD | LG/RD | GN/RD | BK/WH",
        "frontLighting, Left turn,     size,   18 ga | 18 ga | 18 ga | 1 mm2",
        "frontLighting, Fog lamps,     number,  | 35 when fogLamps | 35 when fogLamps | 55 when fogLamps",
        "frontLighting, Left corner lamp, part, cornerBullets | cornerPlug | cornerPlug | cornerPlug",
        "frontLighting, Left headlamp bowl (headlampLeft), branch, 7 1/2 in | 9.0 in | 6 3/4 in | 130 mm path",
        "frontLighting, Right headlamp bowl (headlampRight), from datum,"
                + " 83 3/4 in | 82.5 in on sample | +23 in | 2160 mm",
        "dash, Ignition feed, number, 3 | 3 | 15",
        "dash, Dipped beam,   number, 12 | 12 | 56b",
        "dash, Heater,        number, 6 when heater | 6 when heater | 15h when heater",
        "dash, Horn,          number, 30 | 30 | 71",
        "dash, 'Fuse, heater', part, glass35 | ceramic8 | ceramic8"})
    void aRowIsOneThingInAllYears(String position, String title, String fact, String expected) throws BadCall {
        assertEquals(expected.strip(), words(row(LayMatrix.position(orrin, position, Cancel.NEVER), title, fact))
                .strip());
    }

    private static Row row(Matrix matrix, String title, String fact) {
        return matrix.rows().stream().filter(row -> row.title().equals(title) && row.fact().equals(fact)).findFirst()
                .orElseThrow(() -> new AssertionError("no row " + title + ", " + fact));
    }

    private static String words(Row row) {
        return String.join(" | ", row.cells().stream().map(Cell::words).toList());
    }

    /** 15 1/4 + 24 1/4 + 22 1/4 + 23 = 84 3/4 in = 2152.65 mm, with 25.4 mm to the inch. */
    @Test
    void lengthsOfAChainAddUp() throws BadCall {
        Row station = row(front(), "Right headlamp bowl (headlampRight)", "from datum");
        assertEquals("2127.25 mm", station.cells().get(0).length().orElseThrow().toString());
        assertEquals("2152.65 mm", station.cells().get(2).length().orElseThrow().toString());
    }

    @Test
    void theOddOneOfManyIsMarked() throws BadCall {
        assertEquals(3, row(front(), "Dipped beam", "colour").outlier().orElseThrow());
        assertEquals(0, row(front(), "Left corner lamp", "part").outlier().orElseThrow());
        assertTrue(row(front(), "Left turn", "colour").outlier().isEmpty());
    }

    @Test
    void drawingsAndHarnessesCanBeNamedInAnyOrder() throws BadCall {
        Matrix matrix = LayMatrix.named(orrin, List.of("front70", "front", "front70"), Cancel.NEVER);
        assertEquals(List.of("front70", "front"), matrix.columns().stream().map(Column::name).toList());
    }

    @Test
    void aWrongNameIsAnswered() {
        assertEquals("no drawing fills the position 'dsh'; did you mean 'dash'?", assertThrows(BadCall.class,
                () -> LayMatrix.position(orrin, "dsh", Cancel.NEVER)).getMessage());
        assertTrue(assertThrows(BadCall.class, () -> LayMatrix.named(orrin, List.of("front64", "nothing"),
                Cancel.NEVER)).getMessage().startsWith("no drawing and no harness is called 'nothing'; there is"));
        assertEquals("name at least two drawings, or none for all that fill one position",
                assertThrows(BadCall.class, () -> LayMatrix.named(orrin, List.of("front64", "front64"), Cancel.NEVER))
                        .getMessage());
    }

    @Test
    void theTextFitsAHundredColumnsAndSaysEqualByASign() throws BadCall {
        String text = MatrixText.of(front(), ALL, false, Palette.PLAIN, 100);
        assertTrue(text.lines().allMatch(line -> line.length() <= 100), text);
        assertTrue(text.lines().anyMatch(line -> line.matches("Dipped beam +12 += += +56b \\*")), text);
        assertTrue(text.lines().anyMatch(line -> line.startsWith("equal in all: Bulkhead plug (J1), ")), text);
        String narrow = MatrixText.of(front(), ALL, false, Palette.PLAIN, 60);
        assertTrue(narrow.lines().anyMatch(line -> line.matches("circuits +front67 +front70")), narrow);
    }

    @Test
    void aTableOfTwentyDrawingsGoesOnBelow() throws BadCall {
        Matrix four = front();
        List<Row> rows = four.rows().stream().map(row -> new Row(row.section(), row.subject(), row.title(), row.part(),
                row.fact(), IntStream.range(0, 20).mapToObj(i -> row.cells().get(i % 4)).toList())).toList();
        List<Column> columns = IntStream.range(0, 20).mapToObj(i -> new Column("d" + i, "", "", "")).toList();
        String text = MatrixText.of(new Matrix("twenty", columns, rows, List.of(), 0), ALL, true, Palette.PLAIN, 100);
        assertTrue(text.lines().allMatch(line -> line.length() <= 100), text);
        assertTrue(text.contains("d19"), text);
    }

    @Test
    void aSpreadsheetHasEveryCell() throws BadCall {
        String text = MatrixCsv.text(front(), EnumSet.of(Section.PLACES), false);
        assertTrue(text.contains("\r\nplaces,Left headlamp bowl (headlampLeft),,branch mm,190.5,228.6,171.45,130,yes,"
                + "\r\n"), text);
        assertTrue(text.contains("branch as written,7 1/2 in,9.0 in,6 3/4 in,130 mm path,yes,"), text);
    }

    @Test
    void thePageStandsAloneAndIsWellFormed() throws Exception {
        String page = MatrixPage.of("orrin <&>", LayMatrix.all(orrin, Cancel.NEVER), ALL, false);
        Document document = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(
                new ByteArrayInputStream(page.replace("<!DOCTYPE html>\n", "").getBytes(StandardCharsets.UTF_8)));
        assertEquals(0, document.getElementsByTagName("script").getLength());
        assertTrue(!page.contains("http") && !page.contains("src="), "nothing from elsewhere");
        var tables = document.getElementsByTagName("table");
        for (int i = 0; i < tables.getLength(); i++) {
            Element table = (Element) tables.item(i);
            assertEquals(1, table.getElementsByTagName("caption").getLength());
            int columns = table.getElementsByTagName("thead").item(0).getFirstChild().getNextSibling().getChildNodes()
                    .getLength();
            var rows = table.getElementsByTagName("tr");
            for (int j = 0; j < rows.getLength(); j++) {
                int width = 0;
                for (var cell = rows.item(j).getFirstChild(); cell != null; cell = cell.getNextSibling()) {
                    String span = ((Element) cell).getAttribute("colspan");
                    width += span.isEmpty() ? 1 : Integer.parseInt(span);
                }
                assertEquals(columns, width, rows.item(j)::getTextContent);
            }
        }
    }
}
