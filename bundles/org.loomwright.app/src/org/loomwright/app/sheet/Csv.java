// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.sheet;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Tables as RFC 4180 has them: UTF-8, commas, CR LF at the end of each line, quotes where they are needed. A cell that
 * a spreadsheet would take for a formula is led by an apostrophe, which spreadsheets read as "this is text".
 */
public final class Csv {

    private Csv() {
    }

    /** The bytes of the file. */
    public static byte[] bytes(Table table) {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            printer.printRecord(table.headers());
            for (List<String> row : table.rows()) {
                printer.printRecord(row.stream().map(Csv::harmless).toList());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String harmless(String cell) {
        return !cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0 ? "'" + cell : cell;
    }
}
