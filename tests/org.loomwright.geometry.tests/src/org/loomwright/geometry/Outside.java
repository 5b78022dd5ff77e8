// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Reads figures from outside: rows of fields, with the source of the figures in comment lines on top. */
public final class Outside {

    private Outside() {
    }

    /** Fields of each row of a file. */
    public static List<String[]> rows(String file) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Outside.class.getResourceAsStream(file), StandardCharsets.UTF_8))) {
            return reader.lines().filter(line -> !line.startsWith("#") && !line.isBlank())
                    .map(line -> line.split(";")).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
