// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.write;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.loomwright.sheets.document.Block;

/**
 * Writes a table as RFC 4180 has it: UTF-8, commas, CR LF. A cell that a spreadsheet would take for a formula is led by
 * an apostrophe, which spreadsheets read as "this is text". Rows that are set apart, names of groups and totals, are
 * for people and left out.
 */
public final class CsvWriter {

    private static final String FORMULA = "=+-@\t\r";

    private CsvWriter() {
    }

    /** The bytes of the file. */
    public static byte[] bytes(Block.Grid grid) {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            printer.printRecord(grid.columns().stream().map(Block.Column::heading).toList());
            for (Block.Row row : grid.rows()) {
                if (!row.strong()) {
                    printer.printRecord(row.cells().stream().map(Block.Cell::text).map(CsvWriter::harmless).toList());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    static String harmless(String cell) {
        return !cell.isEmpty() && FORMULA.indexOf(cell.charAt(0)) >= 0 ? "'" + cell : cell;
    }
}
