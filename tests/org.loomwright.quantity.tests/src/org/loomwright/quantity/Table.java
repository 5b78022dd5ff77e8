// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Rows of a data file beside the tests: columns separated by semicolons, lines with {@code #} name the source. */
final class Table {
    private Table() {
    }

    static List<String[]> rows(String file) throws IOException {
        try (InputStream in = Table.class.getResourceAsStream(file)) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return text.lines().filter(line -> !line.startsWith("#")).map(line -> line.split(";")).toList();
        }
    }
}
