// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The size of a conductor in its system: {@code 18 ga} (SAE), {@code 18 awg}, {@code 0.8 mm2}.
 *
 * <p>Cross-section: AWG by the formula of ASTM B258, d = 0.127 mm * 92^((36-n)/39); SAE from the least circular mils of
 * the size; metric the nominal figure. Sizes are ordered by cross-section, then by system.
 *
 * @param system the system of the size
 * @param size the size as written: {@code 18}, {@code 1/0}, {@code 0.8}; metric sizes without needless zeros
 */
public record ConductorSize(SizeSystem system, String size) implements Comparable<ConductorSize> {
    private static final List<String> AWG_ROWS = List.of(
            "18", "16", "14", "12", "10", "8", "6", "4", "3", "2", "1", "1/0", "2/0", "3/0", "4/0");
    private static final Comparator<ConductorSize> ORDER = Comparator.comparingDouble(ConductorSize::areaMm2)
            .thenComparing(ConductorSize::system)
            .thenComparing(ConductorSize::size);

    /** Takes what {@link #parse} accepts; throws {@link IllegalArgumentException} for another size. */
    public ConductorSize {
        Objects.requireNonNull(system);
        size = switch (SizeTables.check(system, size)) {
            case Parsed.Value<String>(String canonical) -> canonical;
            case Parsed.Fault<String>(String message) -> throw new IllegalArgumentException(message);
        };
    }

    /**
     * Reads a size that a person wrote. Refused with a message: sizes that no wire has (0, negative, {@code 99 awg}),
     * SAE sizes outside the table ({@code 3 ga}, {@code 3.7 ga}), metric sizes below 0.05 or above 400 mm².
     */
    public static Parsed<ConductorSize> parse(String size, SizeSystem system) {
        return switch (SizeTables.check(system, size)) {
            case Parsed.Value<String>(String canonical) -> Parsed.of(new ConductorSize(system, canonical));
            case Parsed.Fault<String>(String message) -> Parsed.fault(message);
        };
    }

    public static ConductorSize awg(String size) {
        return new ConductorSize(SizeSystem.AWG, size);
    }

    public static ConductorSize sae(String size) {
        return new ConductorSize(SizeSystem.SAE, size);
    }

    public static ConductorSize metric(String size) {
        return new ConductorSize(SizeSystem.METRIC, size);
    }

    /** Returns the AWG sizes for which ampacity tables have rows, 18 up to 4/0 with 3 and 1, smallest first. */
    public static List<ConductorSize> awgRows() {
        return AWG_ROWS.stream().map(ConductorSize::awg).toList();
    }

    /** Returns the conducting cross-section in mm². */
    public double areaMm2() {
        return switch (system) {
            case AWG -> Math.PI / 4 * diameterMm() * diameterMm();
            case SAE -> SizeTables.saeAreaMm2(size);
            case METRIC -> new BigDecimal(size).doubleValue();
        };
    }

    /** Returns the diameter in mm of a solid conductor of this cross-section; for AWG the defined diameter. */
    public double diameterMm() {
        return system == SizeSystem.AWG
                ? SizeTables.awgDiameterMm(SizeTables.gauge(size))
                : Math.sqrt(areaMm2() * 4 / Math.PI);
    }

    /**
     * Returns the gauge number of an AWG or SAE size, with 0, -1, -2, -3 for 1/0 to 4/0, so that four numbers larger is
     * four less; nothing for a metric size.
     */
    public Optional<Integer> gaugeNumber() {
        return system == SizeSystem.METRIC ? Optional.empty() : Optional.of(SizeTables.gauge(size));
    }

    /** Returns the resistance of copper at 20 C in ohm / m. */
    public double ohmPerMetre20() {
        return ohmPerMetre(20, Metal.COPPER);
    }

    /** Returns the resistance of copper in ohm / m at a conductor temperature in C. */
    public double ohmPerMetre(double celsius) {
        return ohmPerMetre(celsius, Metal.COPPER);
    }

    /** Returns rho20 / A * (1 + alpha (T - 20)) in ohm / m at a conductor temperature in C. */
    public double ohmPerMetre(double celsius, Metal metal) {
        return metal.rho20() / areaMm2() * metal.factor(celsius);
    }

    /**
     * Returns the smallest of {@link #awgRows} that is at least as large as this size: itself if it is one, nothing
     * above 4/0 AWG. A size below 18 AWG gets 18 AWG.
     */
    public Optional<ConductorSize> nextLargerAwg() {
        double area = areaMm2();
        return awgRows().stream().filter(row -> row.areaMm2() >= area).findFirst();
    }

    /** Returns where the cross-section comes from, for people; says so if it is from memory. */
    public String basis() {
        return switch (system) {
            case AWG -> "ASTM B258";
            case SAE -> SizeTables.saeBasis(size);
            case METRIC -> "nominal cross-section";
        };
    }

    /** Returns whether the cross-section is a figure from memory that nobody has checked (SAE 22 and 20). */
    public boolean fromMemory() {
        return system == SizeSystem.SAE && SizeTables.saeFromMemory(size);
    }

    /** Returns the canonical spelling: {@code 18 ga}, {@code 1/0 awg}, {@code 0.8 mm2}. */
    public String written() {
        return size + " " + system.symbol();
    }

    @Override
    public int compareTo(ConductorSize other) {
        return ORDER.compare(this, other);
    }

    /** Returns {@link #written()}. */
    @Override
    public String toString() {
        return written();
    }
}
