// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.PartFacts;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Dimension;
import org.loomwright.quantity.Quantity;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A fuse or breaker that some vehicle has and of which the catalogue does not say what it is: no rating, or nothing
 * that says what the rating means. One finding for each part, however many devices are it.
 */
public final class FuseNotIdentified implements Rule<Target.OfPlatform> {

    private static final RuleInfo INFO = new RuleInfo("fuse-not-identified",
            "Does every fuse state its family, its rating and what the rating means?", Severity.WARNING,
            Kind.TRANSCRIPTION, Scope.PLATFORM,
            "common practice: some period fuses are marked with the current that blows them, about twice what they"
                    + " carry");

    private static final Set<String> BASES = Set.of("continuous", "blow");

    /** What is a part in some vehicle, a list that grows, and in which vehicles. */
    private record Use(List<Name> names, Condition when) {
        Use and(Use other) {
            names.addAll(other.names);
            return new Use(names, when.or(other.when));
        }
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfPlatform> target() {
        return Target.OfPlatform.class;
    }

    @Override
    public void check(Target.OfPlatform target, Findings findings) {
        Map<Part, Use> uses = new LinkedHashMap<>();
        target.platform().devices().values().forEach(each -> device(each, uses));
        for (WiringView view : target.wirings()) {
            view.devices().values().forEach(each -> device(each, uses));
            for (ConnectorView each : view.connectors().values()) {
                use(each.connector().name(), each.housings(), uses);
            }
        }
        uses.forEach((part, use) -> part(target, part, use, findings));
    }

    private static void device(DeviceView device, Map<Part, Use> uses) {
        use(device.device().name(), device.parts(), uses);
    }

    private static void use(Name name, List<Case<Part>> parts, Map<Part, Use> uses) {
        for (Case<Part> each : parts) {
            if (!each.when().isNever() && protects(each.value())) {
                uses.merge(each.value(), new Use(new ArrayList<>(List.of(name)), each.when()), Use::and);
            }
        }
    }

    private static boolean protects(Part part) {
        return switch (part.kind()) {
            case FUSE, BREAKER -> true;
            case FUSIBLE_LINK -> false;
            default -> part.joins().stream().anyMatch(Part.Join::protective);
        };
    }

    private static void part(Target.OfPlatform target, Part part, Use use, Findings findings) {
        Condition unrated = use.when().minus(rated(part, use.when()));
        if (!unrated.isNever()) {
            draft(target, part, use, findings).when(unrated).key("rating").says(words(part) + " states no rating")
                    .advise("state it: rating 10 A, or behind each connection that protects: through 10 A").report();
        }
        if (part.kind() == Part.Kind.BREAKER) {
            return;
        }
        Optional<String> basis = part.word(Part.WordKind.BASIS).map(word -> word.toLowerCase(Locale.ROOT));
        boolean family = part.word(Part.WordKind.FAMILY).isPresent();
        if (family && basis.filter(BASES::contains).isPresent()) {
            return;
        }
        Draft draft = draft(target, part, use, findings).when(use.when()).key("basis")
                .advise("state its family, and basis continuous or basis blow; ask the maker's list, not the label");
        if (basis.isPresent() && !BASES.contains(basis.get())) {
            draft.says(words(part) + " has the basis \"" + basis.get() + "\", which is neither continuous nor blow")
                    .report();
        } else if (basis.isEmpty() && !family) {
            draft.says(words(part) + " states neither its family nor what its rating means").report();
        } else {
            draft.weighs(Severity.NOTE).says(words(part) + (family ? " does not state what its rating means; by its"
                    + " family it is taken for what it carries" : " does not state its family")).report();
        }
    }

    private static Draft draft(Target.OfPlatform target, Part part, Use use, Findings findings) {
        Draft draft = findings.about(target.platform().name(), part.name().text(), words(part))
                .at(part.name().span(), "not identified");
        use.names().forEach(name -> draft.see(name.span(), name + " is one"));
        return draft;
    }

    private static String words(Part part) {
        return switch (part.kind()) {
            case FUSE -> "fuse ";
            case BREAKER -> "breaker ";
            default -> "part ";
        } + part.name();
    }

    /** The vehicles in which everything of the part that protects has a rating in A. */
    private static Condition rated(Part part, Condition within) {
        Condition rated = PartFacts.figures(part, Part.FigureKind.RATING, within).stream()
                .filter(each -> current(each.value().from())).map(Case::when)
                .reduce(within.vehicles().none(), Condition::or);
        List<Part.Join> protective = part.joins().stream().filter(Part.Join::protective).toList();
        return !protective.isEmpty() && protective.stream()
                .allMatch(join -> join.through().filter(FuseNotIdentified::current).isPresent()) ? within : rated;
    }

    private static boolean current(Quantity quantity) {
        return quantity.unit().dimension() == Dimension.CURRENT && quantity.signum() > 0;
    }
}
