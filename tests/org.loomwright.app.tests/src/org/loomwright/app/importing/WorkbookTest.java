// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.importing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;

/** Wire lists in spreadsheets. */
class WorkbookTest {

    private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static final String DAMAGED = "the spreadsheet cannot be read: it is broken off or damaged";
    private static final String SCRIPT = """
            import sys, openpyxl
            from openpyxl.styles import Font
            book = openpyxl.Workbook()
            sheet = book.active
            sheet.title = 'Wires'
            sheet.append(['Circuit', 'Function', 'Gauge', 'From', 'To', 'Length'])
            sheet.append([12, 'Dipped, "left" & more', '16 ga', 'J1:2', 'H1:1', 0.5])
            sheet.append([])
            sheet.append(['13', None, '1.5 mm2', 'J1:3', 'H2:1', '=1000+5'])
            sheet['B4'] = 'Hörn \\u0416'
            sheet['B4'].font = Font(bold=True)
            book.create_sheet('Other').append(['not this'])
            book.save(sys.argv[1])
            """;

    @TempDir
    private Path folder;

    /** Source: openpyxl, an independent writer of spreadsheets. */
    @Test
    @Tag("outside")
    void aSheetThatAnotherProgramWroteIsRead() throws IOException, InterruptedException, BadCall {
        Path file = folder.resolve("wires.xlsx");
        Process python = new ProcessBuilder("/usr/bin/python3", "-c", SCRIPT, file.toString()).inheritIO().start();
        assertTrue(python.waitFor(60, TimeUnit.SECONDS));
        assumeTrue(python.exitValue() == 0, "openpyxl is not there");
        WireTable table = WireTable.of(Files.readAllBytes(file));
        assertEquals(List.of("Circuit", "Function", "Gauge", "From", "To", "Length"), table.heads());
        assertEquals(List.of(2L, 4L), table.rows().stream().map(WireTable.Row::number).toList());
        assertEquals(List.of("12", "Dipped, \"left\" & more", "16 ga", "J1:2", "H1:1", "0.5"),
                table.rows().get(0).cells());
        assertEquals(List.of("13", "Hörn Ж", "1.5 mm2", "J1:3", "H2:1"), table.rows().get(1).cells().subList(0, 5));
        assertEquals("", table.rows().get(1).cell(5), "a formula that no program has worked out yet is empty");
    }

    private static byte[] book(Map<String, String> parts) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, String> part : new TreeMap<>(parts).entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
                zip.closeEntry();
            }
        }
        return bytes.toByteArray();
    }

    private static byte[] sheet(String before, String rows, String strings) throws IOException {
        return book(parts(before, rows, strings));
    }

    private static Map<String, String> parts(String before, String rows, String strings) {
        return new TreeMap<>(Map.of("xl/workbook.xml", "<workbook xmlns='" + MAIN + "' xmlns:r='"
                + "http://schemas.openxmlformats.org/officeDocument/2006/relationships'><sheets><sheet name='a' r:id='r7'/></sheets></workbook>",
                "xl/_rels/workbook.xml.rels", "<Relationships><Relationship Id='r7' Target='worksheets/one.xml'/>"
                        + "</Relationships>",
                "xl/worksheets/one.xml", before + "<worksheet xmlns='" + MAIN + "'><sheetData>" + rows
                        + "</sheetData></worksheet>",
                "xl/sharedStrings.xml", "<sst xmlns='" + MAIN + "'>" + strings + "</sst>"));
    }

    private static String refusal(byte[] bytes) {
        return assertThrows(BadCall.class, () -> WireTable.of(bytes)).getMessage();
    }

    @Test
    void runsFormulasAndSpokenFormsAreTakenAsTheyAreShown() throws IOException, BadCall {
        WireTable table = WireTable.of(sheet("", "<row r='3'><c r='B3' t='s'><v>0</v></c></row>"
                + "<row r='9'><c r='B9'><f>A1+1</f><v>1.50E1</v></c><c t='b'><v>1</v></c>"
                + "<c t='str'><f>B1</f><v> made </v></c>"
                + "<c t='inlineStr'><is><r><t>in</t></r><r><t>line</t></r></is></c></row>", "<si><r><t>Cir</t></r><r><t>cuit</t></r><rPh><t>spoken</t></rPh></si>"));
        assertEquals(List.of("", "Circuit"), table.heads());
        assertEquals(List.of("", "15", "1", "made", "inline"), table.rows().getFirst().cells());
        assertEquals(9, table.rows().getFirst().number());
    }

    @Test
    void nothingComesFromOutsideOfTheFile() throws IOException {
        Path secret = Files.writeString(folder.resolve("secret"), "secret");
        String outside = "<!DOCTYPE w [<!ENTITY e SYSTEM '" + secret.toUri() + "'>]>";
        String row = "<row><c t='inlineStr'><is><t>a&e;b</t></is></c></row>";
        assertEquals(DAMAGED, refusal(sheet(outside, row, "")));
    }

    /** Ten entities that name each other ten times each would be 10 GB of text: in each part that is read. */
    @Test
    void entitiesThatMultiplyAreNotUnfolded() throws IOException {
        StringBuilder type = new StringBuilder("<!DOCTYPE w [<!ENTITY l0 'ha'>");
        for (int i = 1; i < 10; i++) {
            type.append("<!ENTITY l").append(i).append(" '").append(("&l" + (i - 1) + ";").repeat(10)).append("'>");
        }
        type.append("]>");
        String laugh = "<row><c t='inlineStr'><is><t>&l9;</t></is></c></row>";
        assertEquals(DAMAGED, refusal(sheet(type.toString(), laugh, "")));
        Map<String, String> parts = parts("", "<row><c t='s'><v>0</v></c></row>", "<si><t>&l9;</t></si>");
        parts.compute("xl/sharedStrings.xml", (name, text) -> type + text);
        assertEquals(DAMAGED, refusal(book(parts)));
        parts = parts("", "<row><c><v>1</v></c></row>", "");
        parts.compute("xl/workbook.xml", (name, text) -> type + text.replace("name='a'", "name='&l9;'"));
        assertEquals(DAMAGED, refusal(book(parts)));
    }

    /** A document type, a parameter entity and a style sheet that lie on a server: nobody calls there. */
    @Test
    void nobodyIsCalled() throws IOException {
        try (ServerSocket server = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
            server.setSoTimeout(1);
            String address = "http://127.0.0.1:" + server.getLocalPort() + "/";
            String row = "<row><c><v>1</v></c></row>";
            for (String before : List.of("<!DOCTYPE w SYSTEM '" + address + "w.dtd'>",
                    "<!DOCTYPE w [<!ENTITY % p SYSTEM '" + address + "p.dtd'> %p;]>",
                    "<?xml-stylesheet href='" + address + "s.xsl'?>")) {
                byte[] bytes = sheet(before, row, "");
                try {
                    WireTable.of(bytes);
                } catch (BadCall e) {
                    assertEquals(DAMAGED, e.getMessage());
                }
                assertThrows(SocketTimeoutException.class, server::accept, before);
            }
        }
    }

    @Test
    void whatIsNoSheetIsRefusedInOneLine() throws IOException {
        byte[] good = sheet("", "<row><c><v>1</v></c></row>", "");
        assertTrue(refusal(Arrays.copyOf(good, good.length / 3)).contains("spreadsheet"));
        assertEquals("this is no spreadsheet (.xlsx): it holds no workbook", refusal(book(Map.of("a.txt", "b"))));
        assertEquals("the first sheet is empty", refusal(sheet("", "", "")));
        assertTrue(refusal(sheet("", "<row><c t='s'><v>7</v></c></row>", "")).contains("damaged"));
        assertTrue(refusal(sheet("", "<row><c r='ZZZ1'><v>7</v></c></row>", "")).contains("columns"));
        assertTrue(refusal(sheet("", "<row><c><v>1E999999999</v></c></row>", "")).contains("damaged"));
        assertTrue(refusal(sheet("", "<row><c><v>7</v>", "")).contains("damaged"));
        assertTrue(refusal(sheet("", " ".repeat(70 << 20), "")).contains("64 MB"), "it is much when it is unpacked");
    }
}
