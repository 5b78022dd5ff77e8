// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.fit.FitReport;
import org.loomwright.harness.Kit;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.rules.Finding;
import org.loomwright.rules.RuleInfo;

/**
 * What sheets are made of: a kit or a single harness, for some vehicles, with what is known about it. Immutable.
 *
 * @param project   the project
 * @param platform  its platform
 * @param kit       the kit; empty when the sheets are for a harness alone
 * @param name      name of the kit or harness
 * @param title     its title
 * @param revision  revision of the kit; empty for a harness alone
 * @param vehicles  the vehicles
 * @param harnesses the harnesses, each for those of the vehicles that have it
 * @param findings  what the rules say about it, the accepted findings included
 * @param rules     the rules that were asked
 * @param fits      how the harnesses fit, by name
 * @param sources   which sources it was made from: {@code git f3ab8c5}, {@code files as they are on disk}
 */
public record Order(Project project, PlatformView platform, Optional<Kit> kit, String name, String title,
        String revision, Condition vehicles, List<LaidHarness> harnesses, List<Finding> findings,
        List<RuleInfo> rules, Map<String, FitReport> fits, String sources) {

    public Order {
        harnesses = List.copyOf(harnesses);
        findings = List.copyOf(findings);
        rules = List.copyOf(rules);
        fits = Map.copyOf(fits);
    }

    /** {@code year >= 1970 and halogen (312 of 4,608 vehicles)}. */
    public String words() {
        return vehicles.isAlways() ? "every vehicle of " + platformTitle() + " (" + Words.count(vehicles) + ")"
                : Words.of(vehicles) + " (" + Words.count(vehicles) + ")";
    }

    /** The platform's title, else its name. */
    public String platformTitle() {
        String words = platform.platform().title();
        return words.isEmpty() ? platform.name() : words;
    }
}
