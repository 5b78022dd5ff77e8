// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.math.BigDecimal;
import java.util.Map;
import java.util.regex.Pattern;

/** The figures behind {@link ConductorSize}: which sizes exist, and their cross-sections. */
final class SizeTables {
    /** One circular mil, the area of a circle of 0.001 in diameter, in mm². */
    private static final double CIRCULAR_MIL_MM2 = Math.PI / 4 * 0.0254 * 0.0254;

    /** Least circular mils of the SAE sizes (the column of the SAE J1127 / J1128 family as wire vendors reprint it). */
    private static final Map<String, Integer> SAE_CIRCULAR_MILS = Map.ofEntries(
            Map.entry("18", 1_537), Map.entry("16", 2_336), Map.entry("14", 3_702), Map.entry("12", 5_833),
            Map.entry("10", 9_343), Map.entry("8", 14_810), Map.entry("6", 24_538), Map.entry("4", 37_360),
            Map.entry("2", 62_450), Map.entry("1", 77_790), Map.entry("1/0", 98_980), Map.entry("2/0", 125_100),
            Map.entry("3/0", 158_600), Map.entry("4/0", 205_500));

    /** Small SAE sizes, in mm², from memory. */
    private static final Map<String, Double> SAE_FROM_MEMORY = Map.of("22", 0.324, "20", 0.508);

    private static final String SAE_SIZES = "22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 1/0, 2/0, 3/0 or 4/0";
    private static final Pattern GAUGE = Pattern.compile("[1-9][0-9]?|[1-4]/0");
    private static final Pattern SQUARE_MILLIMETRES = Pattern.compile("[0-9]{1,4}(\\.[0-9]{1,6})?");
    private static final int SMALLEST_AWG = 40;
    private static final BigDecimal LEAST_MM2 = new BigDecimal("0.05");
    private static final BigDecimal MOST_MM2 = new BigDecimal("400");

    private SizeTables() {
    }

    /** Returns the canonical spelling of a size, or why it is none. */
    static Parsed<String> check(SizeSystem system, String size) {
        String text = size.strip();
        String shown = text.length() > 20 ? text.substring(0, 17) + "..." : text;
        return switch (system) {
            case SAE -> SAE_CIRCULAR_MILS.containsKey(text) || SAE_FROM_MEMORY.containsKey(text)
                    ? Parsed.of(text)
                    : Parsed.fault("there is no size " + shown + " ga; SAE sizes are " + SAE_SIZES);
            case AWG -> GAUGE.matcher(text).matches() && gauge(text) <= SMALLEST_AWG
                    ? Parsed.of(text)
                    : Parsed.fault("there is no size " + shown + " awg; AWG sizes are whole numbers from "
                            + SMALLEST_AWG + " down to 1, then 1/0 to 4/0");
            case METRIC -> metric(text, shown);
        };
    }

    private static Parsed<String> metric(String text, String shown) {
        if (!SQUARE_MILLIMETRES.matcher(text).matches()) {
            return Parsed.fault(shown + " mm2 is no cross-section; write it like 0.8 mm2");
        }
        BigDecimal area = new BigDecimal(text);
        if (area.compareTo(LEAST_MM2) < 0 || area.compareTo(MOST_MM2) > 0) {
            return Parsed.fault("no conductor has " + shown + " mm2; sizes run from " + LEAST_MM2 + " to " + MOST_MM2);
        }
        return Parsed.of(Figures.stripped(area));
    }

    /** Returns n of the AWG formula: 18 for {@code 18}, 0 for {@code 1/0}, -3 for {@code 4/0}. */
    static int gauge(String size) {
        return size.endsWith("/0") ? 1 - (size.charAt(0) - '0') : Integer.parseInt(size);
    }

    /** ASTM B258: AWG 36 is 0.005 in and AWG 4/0 is 0.46 in by definition, in 39 equal ratios. */
    static double awgDiameterMm(int gauge) {
        return 0.127 * Math.pow(92, (36 - gauge) / 39.0);
    }

    static double saeAreaMm2(String size) {
        Integer circularMils = SAE_CIRCULAR_MILS.get(size);
        return circularMils == null ? SAE_FROM_MEMORY.get(size) : circularMils * CIRCULAR_MIL_MM2;
    }

    static boolean saeFromMemory(String size) {
        return SAE_FROM_MEMORY.containsKey(size);
    }

    static String saeBasis(String size) {
        Integer circularMils = SAE_CIRCULAR_MILS.get(size);
        return circularMils == null
                ? "SAE least cross-section, from memory"
                : String.format(java.util.Locale.ROOT, "SAE least cross-section, %,d circular mils", circularMils);
    }
}
