// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.enumeration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.loomwright.lang.LoomReader;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.standard.StandardRules;

/**
 * Random projects, every vehicle of each on its own. The long run is {@link #main}; its result is in
 * docs/performance.md.
 *
 * <p>Every rule is compared vehicle by vehicle but for three, whose findings are counted by {@link Coverage} instead:
 * {@code vehicle-without-drawing} and {@code never-exists} speak of what a vehicle has not, and a project of that
 * vehicle alone does not know of it; {@code duplicate-circuit} also speaks of two circuits that no vehicle has
 * together. Three more are compared one way only, {@link Comparison} says why.
 */
class RulesAgainstEnumerationTest {

    private static final int PROJECTS = 30;
    private static final int LEAST_RULES = 25;

    private static Set<String> compared() {
        Set<String> ids = StandardRules.book().infos().stream().map(RuleInfo::id)
                .collect(Collectors.toCollection(TreeSet::new));
        ids.removeAll(Set.of("vehicle-without-drawing", "duplicate-circuit", "never-exists"));
        return ids;
    }

    private static Comparison compare(long first, long count) {
        Comparison comparison = new Comparison(LoomReader.create(), compared());
        for (long seed = first; seed < first + count; seed++) {
            comparison.compare("project" + seed, new RandomProject(seed).text());
        }
        return comparison;
    }

    @Test
    void everyRuleFindsAmongAllVehiclesWhatItFindsInEachOfThem() {
        Comparison comparison = compare(0, PROJECTS);
        assertEquals(List.of(), comparison.faults());
        assertTrue(comparison.spoke().size() >= LEAST_RULES, () -> "only these rules spoke: " + comparison.spoke());
    }

    /** The long run: first seed, number of projects; with a third argument the text of each is printed. */
    public static void main(String[] args) {
        long first = Long.parseLong(args[0]);
        long count = Long.parseLong(args[1]);
        for (long seed = first; args.length > 2 && seed < first + count; seed++) {
            System.out.println(new RandomProject(seed).text());
        }
        Comparison comparison = compare(first, count);
        comparison.faults().forEach(System.out::println);
        System.out.println(count + " projects, " + comparison.vehicles() + " vehicles, " + comparison.faults().size()
                + " disagreements; findings by rule " + comparison.spoke());
    }
}
