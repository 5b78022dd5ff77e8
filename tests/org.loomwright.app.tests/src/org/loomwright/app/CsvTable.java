// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** The tables of expected figures beside the tests: a row of heads, and lines that start with {@code #} for people. */
final class CsvTable {

    private CsvTable() {
    }

    static List<CSVRecord> read(String name) throws IOException {
        CSVFormat format = CSVFormat.RFC4180.builder().setCommentMarker('#').setHeader().setSkipHeaderRecord(true)
                .get();
        try (BufferedReader text = new BufferedReader(new InputStreamReader(
                CsvTable.class.getResourceAsStream(name), StandardCharsets.UTF_8));
                CSVParser parser = CSVParser.builder().setReader(text).setFormat(format).get()) {
            return parser.getRecords();
        }
    }
}
