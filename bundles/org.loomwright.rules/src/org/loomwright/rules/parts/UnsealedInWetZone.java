// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.Case;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A sealed connector in a wet zone with a cavity that lets the water in: a wire without seal, or no wire and no plug.
 * That the connector is a sealed one is taken from the seals that it states for other cavities in the same vehicle; one
 * without any seal may be made to stand in the wet, and nothing is said of it.
 */
public final class UnsealedInWetZone implements Rule<Target.OfHousing> {

    private static final RuleInfo INFO = new RuleInfo("unsealed-in-wet-zone",
            "Is every cavity of a sealed connector closed in the wet?", Severity.WARNING, Kind.ENGINEERING,
            Scope.HOUSING, "common practice: one open cavity makes a sealed connector an open one");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfHousing> target() {
        return Target.OfHousing.class;
    }

    @Override
    public void check(Target.OfHousing target, Findings findings) {
        Map<String, Condition> seals = facts(target, Connector.CavityKind.SEAL);
        Optional<Platform.Zone> zone = seals.isEmpty() ? Optional.empty() : zone(target);
        if (zone.filter(Platform.Zone::wet).isEmpty()) {
            return;
        }
        Map<String, Condition> plugs = facts(target, Connector.CavityKind.PLUG);
        Condition none = target.connector().when().vehicles().none();
        Condition sealed = seals.values().stream().reduce(none, Condition::or).and(placed(target));
        for (String cavity : cavities(target)) {
            Condition wired = FittedPart.ends(target, cavity).stream().map(WireEnd::when)
                    .reduce(none, Condition::or);
            Condition open = sealed.minus(seals.getOrDefault(cavity, none)).and(has(target, cavity));
            Draft wire = draft(target, zone.get(), cavity, open.and(wired), "wired", findings)
                    .says("cavity " + cavity + " of " + target.connector().name()
                            + " holds a wire without seal, beside others that are sealed")
                    .advise("state its seal: seal " + cavity + " is ...");
            FittedPart.ends(target, cavity).stream().filter(end -> !end.when().excludes(open))
                    .forEach(end -> wire.see(end.span(), "wire " + end.wire().label()));
            wire.report();
            draft(target, zone.get(), cavity,
                    open.minus(wired).minus(plugs.getOrDefault(cavity, none)), "empty",
                    findings)
                    .says("cavity " + cavity + " of " + target.connector().name()
                            + " is empty and has no plug, beside others that are sealed")
                    .advise("state its plug: plug " + cavity + " is ...")
                    .report();
        }
    }

    private static Draft draft(Target.OfHousing target, Platform.Zone zone, String cavity, Condition when, String key,
            Findings findings) {
        return findings.about(target.wiring().name(), target.connector().name(),
                "connector " + target.connector().name()).when(when).key(cavity + " " + key)
                .at(target.connector().connector().name().span(), "cavity " + cavity + " is open")
                .see(zone.name().span(), "zone " + zone.name() + " is wet");
    }

    private static Map<String, Condition> facts(Target.OfHousing target, Connector.CavityKind kind) {
        Map<String, Condition> facts = new LinkedHashMap<>();
        for (Connector.CavityFact fact : target.connector().connector().cavities()) {
            if (fact.kind() == kind) {
                facts.merge(fact.cavity().text(), FittedPart.when(target, fact), Condition::or);
            }
        }
        return facts;
    }

    private static Set<String> cavities(Target.OfHousing target) {
        Set<String> cavities = new LinkedHashSet<>();
        target.connector().housings().forEach(each -> each.value().pins()
                .forEach(pin -> cavities.add(pin.name().text())));
        return cavities;
    }

    /** The vehicles in which the housing has such a cavity. */
    private static Condition has(Target.OfHousing target, String cavity) {
        Condition has = target.connector().when().vehicles().none();
        for (Case<Part> each : target.connector().housings()) {
            has = each.value().hasPin(cavity) ? has.or(each.when()) : has;
        }
        return has;
    }

    /** The vehicles in which it is in its zone: all but those that lack the branch that leads there. */
    private static Condition placed(Target.OfHousing target) {
        Connector connector = target.connector().connector();
        Condition all = target.connector().when();
        return connector.place().isPresent() ? all : connector.branch().flatMap(ref -> target.wiring().run(ref.text()))
                .map(run -> all.and(target.wiring().platform().vehicles().resolve(run.when()).condition())).orElse(all);
    }

    private static Optional<Platform.Zone> zone(Target.OfHousing target) {
        Connector connector = target.connector().connector();
        return connector.place().or(() -> connector.branch().flatMap(ref -> target.wiring().run(ref.text()))
                .flatMap(run -> run.to())).map(Ref::text).flatMap(target.wiring().platform()::zoneOf);
    }
}
