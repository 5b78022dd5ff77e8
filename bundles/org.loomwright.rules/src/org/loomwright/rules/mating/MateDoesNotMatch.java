// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.mating;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.CavityMap;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * Two halves of a connection that do not go together in some vehicle: one is not there, they are of one gender, of two
 * keyings or families, or a wired cavity of one meets no cavity of the other.
 */
public final class MateDoesNotMatch implements Rule<Target.OfPlatform> {

    private static final RuleInfo INFO = new RuleInfo("mate-does-not-match",
            "Do the two halves of every connection go together?", Severity.ERROR, Kind.TRANSCRIPTION, Scope.PLATFORM,
            "the catalogue's cavities, pins, keying, gender and family of both halves");
    private static final Set<String> GENDERS = Set.of("tab", "socket");

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
        Half.Known known = new Half.Known(target);
        Map<String, List<WireEnd>> ends = new HashMap<>();
        for (WiringView view : target.wirings()) {
            WireEnd.there(view).stream().filter(end -> end.node().kind() == Node.Kind.CAVITY)
                    .forEach(end -> ends.computeIfAbsent(end.node().owner() + ":" + end.node().element(),
                            key -> new ArrayList<>()).add(end));
        }
        for (WiringView view : target.wirings()) {
            findings.checkCancelled();
            for (ConnectorView connector : view.connectors().values()) {
                for (Case<ConnectorView.Mate> mate : connector.mates()) {
                    known.of(mate.value()).ifPresent(half -> new Pair(connector, mate, half, ends, findings).check());
                }
            }
        }
    }

    /** A connector and one of its mates. */
    private record Pair(ConnectorView connector, Case<ConnectorView.Mate> mate, Half half,
            Map<String, List<WireEnd>> ends, Findings findings) {

        void check() {
            draft(mate.when().minus(half.when()), "absent " + half.words())
                    .at(named(), "not there in these vehicles")
                    .says("connector " + connector.name() + " mates " + half.words()
                            + ", which these vehicles do not have")
                    .advise("put the vehicles that have it on the mate, and say what it mates in the others")
                    .report();
            for (Case<Part> mine : connector.housings()) {
                for (Case<Part> other : half.parts()) {
                    parts(mine.value(), other.value(), mate.when().and(mine.when()).and(other.when()));
                }
            }
            maps();
            CavityMap map = CavityMap.of(connector, half.connector());
            for (WireEnd end : ends.getOrDefault(connector.owner() + ":" + connector.name(), List.of())) {
                wired(end, map, half.parts(), half.words(), half.name().span());
            }
            half.connector().filter(other -> other.mates().stream().noneMatch(this::back)).ifPresent(other -> {
                CavityMap mapBack = CavityMap.of(other, Optional.of(connector));
                for (WireEnd end : ends.getOrDefault(other.owner() + ":" + other.name(), List.of())) {
                    wired(end, mapBack, connector.housings(), "connector " + connector.name() + " of "
                            + connector.owner(), connector.connector().name().span());
                }
            });
        }

        /** Where the mate is named. */
        private Span named() {
            return connector.connector().mates().stream().filter(fact -> fact.span().equals(mate.span()))
                    .map(fact -> fact.value().span()).findFirst().orElse(mate.span());
        }

        private boolean back(Case<ConnectorView.Mate> other) {
            return other.value().owner().equals(connector.owner())
                    && other.value().element().equals(connector.name());
        }

        private void parts(Part mine, Part other, Condition when) {
            differ(mine, other, when, Part.WordKind.KEYING, "keying");
            if (other.kind() == Part.Kind.HOUSING || other.kind() == Part.Kind.LAMP || other.kind() == Part.Kind.MOTOR
                    || other.kind() == Part.Kind.LOAD) {
                differ(mine, other, when, Part.WordKind.FAMILY, "family");
            }
            Optional<String> gender = word(mine, Part.WordKind.GENDER).filter(GENDERS::contains);
            if (gender.isPresent() && gender.equals(word(other, Part.WordKind.GENDER))) {
                draft(when, "gender " + mine.name() + " " + other.name())
                        .at(named(), "both " + gender.get())
                        .see(mine.name().span(), "gender of " + connector.name())
                        .see(other.name().span(), "gender of the mate")
                        .says("connector " + connector.name() + " and " + half.words() + " both have the gender "
                                + gender.get())
                        .advise("name the other half of the pair")
                        .report();
            }
        }

        private void differ(Part mine, Part other, Condition when, Part.WordKind kind, String word) {
            Optional<String> a = word(mine, kind);
            Optional<String> b = word(other, kind);
            if (a.isPresent() && b.isPresent() && !a.equals(b)) {
                Draft draft = draft(when, word + " " + mine.name() + " " + other.name())
                        .at(named(), "another " + word)
                        .see(mine.name().span(), word + " " + mine.word(kind).orElseThrow())
                        .see(other.name().span(), word + " " + other.word(kind).orElseThrow())
                        .says("connector " + connector.name() + " has the " + word + " "
                                + mine.word(kind).orElseThrow() + ", and " + half.words() + " has "
                                + other.word(kind).orElseThrow())
                        .advise("name the housing that fits it in these vehicles");
                if (kind == Part.WordKind.FAMILY) {
                    draft.weighs(Severity.WARNING);
                }
                draft.report();
            }
        }

        private static Optional<String> word(Part part, Part.WordKind kind) {
            return part.word(kind).map(word -> word.toLowerCase(Locale.ROOT));
        }

        /** Maps to a cavity or pin that the mate does not have. */
        private void maps() {
            for (Connector.CavityFact fact : connector.connector().cavities()) {
                if (fact.kind() == Connector.CavityKind.MAP) {
                    Condition when = connector.when().vehicles().resolve(fact.when()).condition().and(mate.when());
                    lacking(half.parts(), fact.value().text(), when).forEach((part, where) -> draft(where,
                            "map " + fact.cavity() + " " + part.name())
                            .at(fact.value().span(), "no such cavity")
                            .see(part.name().span(), "part " + part.name())
                            .says("cavity " + fact.cavity() + " of " + connector.name() + " is mapped to cavity "
                                    + fact.value() + ", which " + half.words() + " does not have")
                            .advise("name one of its cavities, or give the map the vehicles for which it holds")
                            .report());
                }
            }
        }

        /** A wired cavity of one half that meets nothing in the other. */
        private void wired(WireEnd end, CavityMap map, List<Case<Part>> others, String words, Span declared) {
            String cavity = end.node().pin();
            Condition here = cavity.isEmpty() ? end.when().vehicles().none()
                    : end.when().and(mate.when()).minus(mapped(end));
            if (here.isNever()) {
                return;
            }
            Map<Part, Condition> lacking = new LinkedHashMap<>();
            map.meets(cavity).forEach((meets, when) -> lacking(others, meets, here.and(when))
                    .forEach((part, where) -> lacking.merge(part, where, Condition::or)));
            Condition has = has(cavity, end.node().owner().equals(connector.owner())
                    && end.node().element().equals(connector.name()) ? connector.housings() : half.parts());
            lacking.forEach((part, when) -> findings.about(end.wire()).when(when.and(has))
                    .key(end.node().label() + " " + words + " " + part.name())
                    .at(end.span(), "meets no cavity")
                    .see(declared, words)
                    .see(part.name().span(), "part " + part.name())
                    .says("wire " + end.wire().label() + " ends in cavity " + end.node().label()
                            + ", and " + words + " has no cavity that meets it")
                    .advise("state what it meets: map " + cavity + " to ..., or lead the wire to a cavity that both"
                            + " halves have")
                    .report());
        }

        /** Where a map of this connector names what the cavity meets; then the map is at fault, not the wire. */
        private Condition mapped(WireEnd end) {
            Condition mapped = end.when().vehicles().none();
            for (Connector.CavityFact fact : connector.connector().cavities()) {
                if (fact.kind() == Connector.CavityKind.MAP && fact.cavity().text().equals(end.node().pin())
                        && end.node().element().equals(connector.name())
                        && end.node().owner().equals(connector.owner())) {
                    mapped = mapped.or(end.when().vehicles().resolve(fact.when()).condition());
                }
            }
            return mapped;
        }

        /** The vehicles in which one half has a cavity itself; where it has not, that is another rule's finding. */
        private Condition has(String cavity, List<Case<Part>> parts) {
            Condition has = mate.when();
            for (Case<Part> each : parts) {
                has = !each.value().pins().isEmpty() && !each.value().hasPin(cavity) ? has.minus(each.when()) : has;
            }
            return has;
        }

        private static Map<Part, Condition> lacking(List<Case<Part>> parts, String cavity, Condition within) {
            Map<Part, Condition> lacking = new LinkedHashMap<>();
            for (Case<Part> each : parts) {
                Condition when = each.when().and(within);
                if (!each.value().pins().isEmpty() && !each.value().hasPin(cavity) && !when.isNever()) {
                    lacking.merge(each.value(), when, Condition::or);
                }
            }
            return lacking;
        }

        private Draft draft(Condition when, String key) {
            return findings.about(connector.owner(), connector.name(), "connector " + connector.name()).when(when)
                    .key(key);
        }
    }
}
