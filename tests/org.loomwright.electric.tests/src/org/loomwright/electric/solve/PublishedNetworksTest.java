// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;

/** Networks that are worked out in a published text, to the digits that are printed and to those of hand calculation. */
@Tag("outside")
class PublishedNetworksTest {

    private static final double EXACT = 1e-6;

    @TestFactory
    Stream<DynamicTest> agreesWithTheText() throws IOException {
        List<String> entries = new ArrayList<>();
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                getClass().getResourceAsStream("published-networks.txt"), StandardCharsets.UTF_8))) {
            for (String line : reader.lines().filter(each -> !each.startsWith("#")).toList()) {
                if (line.startsWith(" ")) {
                    entries.add(entries.removeLast() + ", " + line.strip());
                } else {
                    entries.add(line);
                }
            }
        }
        assertTrue(entries.size() >= 10, "networks are missing");
        return entries.stream().map(entry -> DynamicTest.dynamicTest(entry.substring(0, entry.indexOf(':')),
                () -> check(entry.substring(entry.indexOf(": ") + 2))));
    }

    private static void check(String entry) {
        Netlist.Builder builder = Netlist.builder();
        List<String> asked = new ArrayList<>();
        boolean printed = false;
        for (String clause : entry.split(", ")) {
            String text = clause;
            if (clause.startsWith("printed ") || clause.startsWith("exact ")) {
                printed = clause.startsWith("printed ");
                text = clause.substring(clause.indexOf(' ') + 1);
            }
            String[] words = text.split(" ");
            switch (words[0]) {
                case "hold" -> builder.hold(Integer.parseInt(words[1]), Double.parseDouble(words[2]));
                case "R" -> builder.resistor(Integer.parseInt(words[1]), Integer.parseInt(words[2]),
                        Double.parseDouble(words[3]));
                default -> asked.add((printed ? "printed " : "exact ") + text);
            }
        }
        Outcome.Solution solution = assertInstanceOf(Outcome.Solution.class, new NewtonSolver().solve(builder.build()));
        assertTrue(solution.residual() < 1e-9, "charge is not conserved: " + solution.residual());
        assertTrue(!asked.isEmpty());
        for (String each : asked) {
            String[] words = each.split(" ");
            double found = words[1].equals("V")
                    ? solution.across(Integer.parseInt(words[2]), Integer.parseInt(words[3]))
                    : solution.currents()[Integer.parseInt(words[2]) - 1];
            String value = words[words.length - 1];
            double wanted = Double.parseDouble(value);
            double near = words[0].equals("printed") ? digit(value) : EXACT * Math.abs(wanted);
            assertEquals(wanted, found, near, each);
        }
    }

    /** Two thirds of the last digit that is printed: some figures there are cut, not rounded. */
    private static double digit(String value) {
        return 0.67 * Math.pow(10, -new BigDecimal(value).scale());
    }
}
