// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Vehicles;
import org.loomwright.harness.Device;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Span;

/** Resolves facts on one platform: which value holds for which vehicles. */
final class Facts {

    private final Problems problems;
    private final Vehicles vehicles;
    private final Parts parts;

    Facts(Problems problems, Vehicles vehicles, Parts parts) {
        this.problems = problems;
        this.vehicles = vehicles;
        this.parts = parts;
    }

    /** The vehicles of an expression, within those of the element around it. */
    Condition condition(Expression expression, Span span, Condition within) {
        if (expression instanceof Expression.Always) {
            return within;
        }
        var resolution = vehicles.resolve(expression);
        resolution.problems().forEach(problem -> problems.condition(span.file(), problem, span));
        return resolution.condition().and(within);
    }

    /**
     * The cases of one property; a value that {@code meaning} cannot make sense of is left out, it has reported why.
     * Two values for one vehicle are reported once a pair.
     */
    <T, R> List<Case<R>> cases(String property, List<Fact<T>> facts, Condition within,
            Function<T, Optional<R>> meaning) {
        List<Case<R>> cases = new ArrayList<>(facts.size());
        for (Fact<T> fact : facts) {
            Condition when = condition(fact.when(), fact.span(), within);
            meaning.apply(fact.value()).ifPresent(value -> cases.add(new Case<>(value, when, fact.span())));
        }
        for (int i = 0; i < cases.size(); i++) {
            for (int j = i + 1; j < cases.size(); j++) {
                Condition both = cases.get(i).when().and(cases.get(j).when());
                if (!both.isNever() && !cases.get(i).value().equals(cases.get(j).value())) {
                    problems.add("facts-overlap", cases.get(j).span(), "two values of " + property + " hold for "
                            + both.words() + " (" + both.tally() + "), the other at " + cases.get(i).span().at(),
                            "narrow one of the two conditions");
                }
            }
        }
        return List.copyOf(cases);
    }

    /** The catalogue part of that name; one that is missing is reported. */
    Optional<Part> part(Ref ref) {
        return parts.find(ref, problems);
    }

    /** Reports a reference to something that is not among the known names. */
    void known(String sort, Optional<Ref> ref, Collection<String> names) {
        ref.filter(each -> !each.text().isEmpty() && !names.contains(each.text()))
                .ifPresent(each -> problems.unknown(sort, each, names));
    }

    DeviceView device(String owner, Device device, Condition within) {
        Condition when = condition(device.when(), device.span(), within);
        return new DeviceView(owner, device, when, cases("part", device.part(), when, this::part));
    }
}
