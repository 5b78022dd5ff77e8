// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.ampacity;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.quantity.ConductorSize;

/**
 * The second basis: FAA AC 43.13-1B Table 11-9, continuous current of wires in large bundles at 70 C ambient. The
 * bundle is in the figures already, so that none is counted; other ambients follow sqrt((Tr - Ta) / (Tr - 70)), and no
 * figure is raised below 70 C. SAE and mm² sizes are scaled by section from the next larger row. A table for aircraft:
 * figures for comparison. Immutable; safe for use by several threads.
 */
public final class AircraftTable {

    /** Where it comes from. */
    public static final String BASIS = "FAA AC 43.13-1B Table 11-9";
    /** The ambient of the table in C. */
    public static final double BASE_AMBIENT = 70;
    private static final String RESOURCE = "faa-ac-43-13-1b-table-11-9.csv";

    /**
     * An allowed current.
     *
     * @param amps       the current in A
     * @param derivation how it came about
     */
    public record Allowed(double amps, String derivation) {
    }

    private final Map<ConductorSize, TreeMap<Integer, Double>> rows = new LinkedHashMap<>();
    private final Map<ConductorSize, Double> ohms = new LinkedHashMap<>();

    /** Reads the table. */
    public AircraftTable() {
        try (InputStream stream = AircraftTable.class.getResourceAsStream(RESOURCE);
                BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            reader.lines().filter(line -> Character.isDigit(line.charAt(0))).forEach(line -> {
                String[] cells = line.split(",");
                ConductorSize size = ConductorSize.awg(cells[0]);
                rows.put(size, new TreeMap<>(Map.of(105, Double.valueOf(cells[1]), 150, Double.valueOf(cells[2]), 200,
                        Double.valueOf(cells[3]))));
                ohms.put(size, Double.valueOf(cells[4]) / 1000);
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns the sizes that have a row, the thinnest first, with their resistance in ohm per foot at 20 C. */
    public Map<ConductorSize, Double> ohmsPerFoot() {
        return Map.copyOf(ohms);
    }

    /**
     * Returns what a wire may carry in a large bundle; empty for a size outside of the table and for insulation below
     * its lowest class of 105 C.
     *
     * @param classC   temperature class of the insulation in C
     * @param ambientC ambient temperature in C
     */
    public Optional<Allowed> allowed(ConductorSize size, double classC, double ambientC) {
        double area = size.areaMm2();
        for (Map.Entry<ConductorSize, TreeMap<Integer, Double>> row : rows.entrySet()) {
            Map.Entry<Integer, Double> column = row.getValue().floorEntry((int) Math.floor(classC));
            if (row.getKey().areaMm2() >= area && column != null) {
                double share = size.equals(row.getKey()) ? 1 : area / row.getKey().areaMm2();
                double ambient = ambientC >= column.getKey() ? 0 : Math.min(1, Math.sqrt((column.getKey() - ambientC)
                        / (column.getKey() - BASE_AMBIENT)));
                double amps = column.getValue() * share * ambient;
                return Optional.of(new Allowed(amps, Figure.of(column.getValue()) + " A (" + row.getKey() + ", "
                        + column.getKey() + " C)" + (share == 1 ? "" : " x " + Figure.of(share, 3)
                                + " by cross-section") + " x " + Figure.of(ambient, 2) + " (" + Figure.of(ambientC)
                        + " C ambient) = " + Figure.of(amps, 1) + " A in a large bundle; " + BASIS));
            }
        }
        return Optional.empty();
    }
}
