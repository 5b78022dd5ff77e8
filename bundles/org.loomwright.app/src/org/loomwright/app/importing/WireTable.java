// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.importing;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.loomwright.app.BadCall;
import org.loomwright.lang.text.TextDecoder;

/**
 * A table as somebody else's program wrote it: headings and rows of text. Rows may be shorter than the headings.
 *
 * @param heads the headings
 * @param rows  the rows, empty ones left out
 */
public record WireTable(List<String> heads, List<Row> rows) {

    static final int MOST_ROWS = 50_000;

    public WireTable {
        heads = List.copyOf(heads);
        rows = List.copyOf(rows);
    }

    /**
     * A row.
     *
     * @param number its number in the file, the headings being row 1
     * @param cells  its cells, without white space around them
     */
    public record Row(long number, List<String> cells) {

        public Row {
            cells = List.copyOf(cells);
        }

        /** A cell; empty where the row has none. */
        public String cell(int column) {
            return column >= 0 && column < cells.size() ? cells.get(column) : "";
        }
    }

    /**
     * Reads comma-separated values after RFC 4180; semicolons and tabs separate as well when the headings use them.
     *
     * @throws BadCall if it is no text, has no headings, or is broken off within quotes
     */
    public static WireTable csv(byte[] bytes) throws BadCall {
        TextDecoder.Decoded decoded = TextDecoder.decode(bytes);
        if (decoded.fault().isPresent()) {
            throw new BadCall("the table cannot be read: " + decoded.fault().get().message());
        }
        String text = decoded.text();
        CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(delimiter(text)).setIgnoreEmptyLines(false).get();
        List<String> heads = new ArrayList<>();
        List<Row> rows = new ArrayList<>();
        try (CSVParser parser = CSVParser.parse(new StringReader(text), format)) {
            for (CSVRecord record : parser) {
                List<String> cells = record.stream().map(String::strip).toList();
                if (heads.isEmpty()) {
                    heads.addAll(cells);
                } else if (cells.stream().anyMatch(cell -> !cell.isEmpty())) {
                    if (rows.size() == MOST_ROWS) {
                        throw tooLong();
                    }
                    rows.add(new Row(record.getRecordNumber(), cells));
                }
            }
        } catch (IOException | UncheckedIOException | IllegalStateException e) {
            throw new BadCall("the table cannot be read: it is broken off, or a quote is not closed");
        }
        if (heads.stream().allMatch(String::isEmpty)) {
            throw new BadCall("the table has no headings in its first row");
        }
        return new WireTable(heads, rows);
    }

    /**
     * Reads a table in whatever form it has: the first sheet of a spreadsheet (.xlsx), or comma-separated values.
     *
     * @throws BadCall if it is neither, has no headings, or is broken off
     */
    public static WireTable of(byte[] bytes) throws BadCall {
        if (!Workbook.is(bytes)) {
            return csv(bytes);
        }
        List<Row> rows = Workbook.rows(bytes);
        if (rows.isEmpty()) {
            throw new BadCall("the first sheet is empty");
        }
        return new WireTable(rows.getFirst().cells(), rows.subList(1, rows.size()));
    }

    static BadCall tooLong() {
        return new BadCall("the table has more than " + MOST_ROWS + " rows; import it in parts");
    }

    private static char delimiter(String text) {
        String first = text.lines().findFirst().orElse("");
        char best = ',';
        for (char each : new char[] {';', '\t'}) {
            best = count(first, each) > count(first, best) ? each : best;
        }
        return best;
    }

    private static long count(String text, char wanted) {
        return text.chars().filter(each -> each == wanted).count();
    }
}
