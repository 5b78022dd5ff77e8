// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.ampacity;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.loomwright.quantity.ConductorSize;

/**
 * A table of allowable currents by conductor size and temperature rating of the insulation, at one base ambient.
 * Immutable; safe for use by several threads.
 *
 * @param basis     where it comes from
 * @param amps      current in A by AWG size, then by rating in C
 * @param factors50 factor for an ambient of 50 C by rating in C
 */
public record AmpacityTable(String basis, Map<String, TreeMap<Integer, Double>> amps,
        TreeMap<Integer, Double> factors50) {

    /** The base ambient of the table in C. */
    public static final int BASE_AMBIENT = 30;

    private static final String RESOURCE = "33-cfr-183-425-table-5.csv";

    /** Reads 33 CFR 183.425 Table 5. */
    public static AmpacityTable cfr() {
        try (InputStream stream = AmpacityTable.class.getResourceAsStream(RESOURCE);
                BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return read("33 CFR 183.425 Table 5",
                    reader.lines().filter(line -> !line.startsWith("#") && !line.isBlank()).toList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static AmpacityTable read(String basis, List<String> lines) {
        String[] head = lines.getFirst().split(",");
        Map<String, TreeMap<Integer, Double>> amps = new TreeMap<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",");
            TreeMap<Integer, Double> row = new TreeMap<>();
            for (int i = 1; i < cells.length; i++) {
                row.put(Integer.valueOf(head[i]), Double.valueOf(cells[i]));
            }
            amps.put(cells[0], row);
        }
        TreeMap<Integer, Double> factors = amps.remove("50 C");
        return new AmpacityTable(basis, amps, factors);
    }

    /** Returns the temperature ratings that it has columns for, in C, ascending. */
    public NavigableSet<Integer> ratings() {
        return new TreeSet<>(factors50.keySet());
    }

    /** Returns the column for insulation of a temperature class: the greatest rating that is not above it. */
    public Optional<Integer> column(double classC) {
        return Optional.ofNullable(factors50.floorKey((int) Math.floor(classC)));
    }

    /** Returns the current in A of an AWG size that has a row, in a column that it has. */
    public Optional<Double> amps(ConductorSize row, int rating) {
        return Optional.ofNullable(amps.get(row.size())).map(each -> each.get(rating));
    }
}
