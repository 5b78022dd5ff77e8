// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.ampacity;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.SizeSystem;

/** The sizes of conductors that are made, and the smallest of them that will do. */
public final class Gauges {

    private static final List<String> NUMBERS = List.of("20", "18", "16", "14", "12", "10", "8", "6", "4", "2", "1",
            "1/0", "2/0", "3/0", "4/0");
    private static final List<String> SECTIONS = List.of("0.5", "0.75", "1", "1.5", "2.5", "4", "6", "10", "16", "25",
            "35", "50", "70", "95");

    private static final Map<SizeSystem, List<ConductorSize>> MADE = Arrays.stream(SizeSystem.values())
            .collect(Collectors.toUnmodifiableMap(system -> system, Gauges::sizes));

    private Gauges() {
    }

    private static List<ConductorSize> sizes(SizeSystem system) {
        return system == SizeSystem.METRIC ? SECTIONS.stream().map(ConductorSize::metric).toList()
                : NUMBERS.stream().map(number -> new ConductorSize(system, number)).toList();
    }

    /** Returns the sizes of a system, the thinnest first. */
    public static List<ConductorSize> made(SizeSystem system) {
        return MADE.get(system);
    }

    /** Returns the thinnest size of a system that passes a test; empty when none does. */
    public static Optional<ConductorSize> smallest(SizeSystem system, Predicate<ConductorSize> passes) {
        return made(system).stream().filter(passes).findFirst();
    }
}
