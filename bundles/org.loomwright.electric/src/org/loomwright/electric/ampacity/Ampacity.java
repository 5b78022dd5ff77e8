// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.ampacity;

import java.util.List;
import java.util.Optional;
import org.loomwright.quantity.ConductorSize;

/**
 * Computes the current that a wire may carry for ever: table(size, class) x ambient factor x bundle factor.
 *
 * <p>Sizes without a row are scaled by cross-section from the next larger row. The ambient factor is 1 up to 30 C, the
 * table's factor for 50 C above 30 C up to 50 C, and sqrt((Tr - Ta) / (Tr - 30)) above 50 C, there never more than the
 * factor for 50 C; 0 when the ambient reaches the rating. Pure and immutable; constant effort. Source: 33 CFR 183.425
 * Table 5, a law for boats with direct current under 50 V: a figure for comparison, and no statement that anything
 * complies with that law. It leaves to others what currents flow.
 */
public final class Ampacity {

    /** Below this share of the smallest row a conductor counts as smaller than the table reaches. */
    private static final double NOMINAL = 0.9;

    private record Row(ConductorSize size, double area) {
    }

    private final AmpacityTable table;
    private final List<Row> rows = ConductorSize.awgRows().stream().map(size -> new Row(size, size.areaMm2())).toList();

    /** Takes the table to start from. */
    public Ampacity(AmpacityTable table) {
        this.table = table;
    }

    /** Returns the one after 33 CFR 183.425 Table 5. */
    public static Ampacity cfr() {
        return new Ampacity(AmpacityTable.cfr());
    }

    /** Returns the table that it starts from. */
    public AmpacityTable table() {
        return table;
    }

    /**
     * Returns the allowed current; empty for a conductor above the largest row or an insulation class below the lowest
     * column.
     *
     * @param size     the conductor
     * @param classC   temperature class of the insulation in C
     * @param ambientC ambient temperature in C
     * @param wires    number of current-carrying wires in the bundle, this one included
     */
    public Optional<Allowance> allowed(ConductorSize size, double classC, double ambientC, int wires) {
        double area = size.areaMm2();
        Optional<Row> row = row(area);
        Optional<Integer> column = table.column(classC);
        if (row.isEmpty() || column.isEmpty()) {
            return Optional.empty();
        }
        int rating = column.get();
        ConductorSize start = row.get().size();
        double rowAmps = table.amps(start, rating).orElseThrow();
        double base = size.equals(start) ? rowAmps : rowAmps * (area / row.get().area());
        Factor ambient = ambient(rating, ambientC);
        Factor bundle = bundle(wires);
        return Optional.of(new Allowance(base * ambient.value() * bundle.value(), base, size, start, rowAmps, rating,
                ambient, bundle, ambientC, area < NOMINAL * rows.getFirst().area(), table.basis()));
    }

    /** The first row that is not below a cross-section in mm2. */
    private Optional<Row> row(double area) {
        for (Row row : rows) {
            if (row.area() >= area) {
                return Optional.of(row);
            }
        }
        return Optional.empty();
    }

    /**
     * Returns the factor for an ambient temperature.
     *
     * @param rating a column of the table, in C
     */
    public Factor ambient(int rating, double ambientC) {
        String reason = Figure.of(ambientC) + " C ambient";
        if (ambientC >= rating) {
            return Factor.of(0, reason + ", at or above the " + rating + " C of the insulation");
        }
        if (ambientC <= AmpacityTable.BASE_AMBIENT) {
            return Factor.of(1, reason);
        }
        double at50 = table.factors50().get(rating);
        double formula = formula(rating, ambientC);
        if (ambientC > 50) {
            return formula <= at50 ? Factor.of(formula, reason + ", formula")
                    : Factor.of(at50, reason + ", factor for 50 C");
        }
        return rating == 105 ? Factor.of(at50, reason + ", factor for 50 C")
                : Factor.fromMemory(at50, reason + ", factor for 50 C", formula);
    }

    /** Returns sqrt((Tr - Ta) / (Tr - 30)), for a rating and an ambient in C; 0 when the ambient reaches the rating. */
    public static double formula(double rating, double ambientC) {
        return ambientC >= rating ? 0 : Math.sqrt((rating - ambientC) / (rating - AmpacityTable.BASE_AMBIENT));
    }

    /** Returns the factor for a number of current-carrying wires in a bundle. */
    public Factor bundle(int wires) {
        if (wires <= 2) {
            return Factor.of(1, wires == 2 ? "2 wires" : "1 wire");
        }
        if (wires == 3) {
            return Factor.of(0.70, "3 wires");
        }
        if (wires <= 6) {
            return Factor.of(0.60, "4-6 wires");
        }
        return wires <= 24 ? Factor.of(0.50, "7-24 wires") : Factor.fromMemory(0.40, "25 or more wires", 0.50);
    }

    /** Returns the numbers of wires at which the bundle factor drops, ascending, 1 first. */
    public static int[] bundleSteps() {
        return new int[] {1, 3, 4, 7, 25};
    }

    @Override
    public String toString() {
        return "ampacity after " + table.basis();
    }
}
