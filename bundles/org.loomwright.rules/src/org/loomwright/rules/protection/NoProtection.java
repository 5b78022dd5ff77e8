// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;
import org.loomwright.rules.connection.Connections;
import org.loomwright.rules.connection.Edge;
import org.loomwright.rules.connection.Fitment;
import org.loomwright.rules.connection.Link;
import org.loomwright.rules.connection.Path;
import org.loomwright.rules.connection.Point;
import org.loomwright.rules.connection.Protection;
import org.loomwright.rules.connection.Reach;
import org.loomwright.rules.connection.Supply;

/**
 * A wire that a source can feed without a protective device between them. A fusible link counts for a wire at least
 * four gauge numbers larger, and only against a short circuit. Runs that may stand unfused leave a note.
 */
public final class NoProtection implements Rule<Target.OfNetwork> {

    /** A link is this many gauge numbers smaller than the wire that it protects (common practice). */
    private static final int LINK_STEPS = 4;
    /** The same as a ratio of cross-sections: four steps of AWG, 92^(8/39), rounded down. */
    private static final double LINK_RATIO = 2.5;

    private static final RuleInfo INFO = new RuleInfo("no-protection",
            "Does a protective device stand before every wire?", Severity.ERROR, Kind.ENGINEERING,
            Scope.PROTECTION_TREE, "common practice: fuse at the source; exceptions after 33 CFR 183.455(b)");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfNetwork> target() {
        return Target.OfNetwork.class;
    }

    @Override
    public void check(Target.OfNetwork target, Findings findings) {
        new Search(target, findings).search();
    }

    /** The search through one network. */
    private static final class Search {
        private static final Predicate<Edge> OPEN = edge -> edge.protection() == Protection.NONE;
        private static final Predicate<Supply> UNLIMITED = supply -> !UnfusedRuns.selfLimited(supply);

        private final Connections connections;
        private final Fitment fitment;
        private final Findings findings;
        private final UnfusedRuns allowed;
        private final Reach bare;

        Search(Target.OfNetwork target, Findings findings) {
            this.connections = target.connections();
            this.fitment = connections.fitment();
            this.findings = findings;
            this.allowed = new UnfusedRuns(connections, target.shapes());
            this.bare = connections.fed(UNLIMITED, OPEN);
        }

        void search() {
            for (Edge edge : connections.edges()) {
                if (edge.link() instanceof Link.OfWire wire && edge.protection() == Protection.NONE && asked(wire)) {
                    findings.checkCancelled();
                    Condition when = bare.at(edge.a()).or(bare.at(edge.b())).and(edge.when());
                    if (!when.isNever()) {
                        unprotected(edge, wire, when);
                    }
                }
            }
            for (Edge edge : connections.edges()) {
                if (edge.protection() == Protection.LINK) {
                    link(edge);
                }
            }
        }

        private boolean asked(Link.OfWire wire) {
            return !fitment.ours() || fitment.isOurs(wire.wire().owner());
        }

        private void unprotected(Edge edge, Link.OfWire wire, Condition when) {
            Condition rest = when;
            for (UnfusedRuns.Run run : allowed.of(edge, wire, when)) {
                Condition here = run.when().and(rest);
                rest = rest.minus(run.when());
                draft(wire, here, run.stands() ? "unfused" : "conditional")
                        .weighs(run.stands() ? Severity.NOTE : Severity.WARNING)
                        .says("wire " + wire.wire().label() + (run.stands() ? " stands without protection, since "
                                : " has no protection before it: ") + run.reason())
                        .step(path(edge, here))
                        .advise(run.stands() ? "list it on the cover sheet; check that nothing can chafe it"
                                : "shorten and enclose it, or put a protective device at the source")
                        .report();
            }
            draft(wire, rest, "none")
                    .says("no fuse, breaker or link stands between a source and wire " + wire.wire().label())
                    .step(path(edge, rest))
                    .advise("put a fuse near the source, sized for the thinnest wire behind it")
                    .report();
        }

        private Draft draft(Link.OfWire wire, Condition when, String key) {
            Span span = wire.wire().wire().name().span();
            return findings.about(wire.wire()).when(when).key(key)
                    .at(span.equals(Span.NONE) ? wire.wire().wire().span() : span, "fed without protection");
        }

        private String path(Edge edge, Condition when) {
            Map<Point, Condition> starts = new LinkedHashMap<>();
            List<String> names = new ArrayList<>();
            connections.supplies().stream().filter(UNLIMITED).forEach(supply -> supply.live().forEach(pin -> {
                starts.merge(pin, supply.when(), Condition::or);
                names.add(supply.device().name());
            }));
            return Path.find(connections, starts, edge.a(), when, each -> OPEN.test(each) && !each.isGround())
                    .or(() -> Path.find(connections, starts, edge.b(), when,
                            each -> OPEN.test(each) && !each.isGround()))
                    .map(points -> "fed by way of " + points.stream().map(Point::toString)
                            .collect(Collectors.joining(" - ")))
                    .orElse("fed by " + String.join(", ", names));
        }

        /** The wires behind a link: each must be large enough for it. */
        private void link(Edge link) {
            Map<Point, Condition> starts = new LinkedHashMap<>();
            starts.put(link.b(), bare.at(link.a()).and(link.when()));
            starts.put(link.a(), bare.at(link.b()).and(link.when()));
            Reach behind = connections.from(starts, edge -> OPEN.test(edge) && !edge.isGround());
            for (Edge edge : connections.edges()) {
                if (edge.link() instanceof Link.OfWire wire && edge.protection() == Protection.NONE && asked(wire)) {
                    Condition fed = behind.at(edge.a()).or(behind.at(edge.b())).and(edge.when())
                            .minus(bare.at(edge.a())).minus(bare.at(edge.b()));
                    if (!fed.isNever()) {
                        sizes(link, wire, fed);
                    }
                }
            }
        }

        private void sizes(Edge link, Link.OfWire wire, Condition fed) {
            Condition known = fed.vehicles().none();
            for (Case<ConductorSize> linkSize : sizesOf(link)) {
                for (Case<ConductorSize> size : wire.wire().sizes()) {
                    known = known.or(linkSize.when().and(size.when()));
                }
            }
            draft(wire, fed.minus(known), "unsized " + name(link)).weighs(Severity.NOTE)
                    .says("wire " + wire.wire().label() + " is not judged; only " + name(link)
                            + " stands before it, and the size of one of them is not known")
                    .advise("state the size of the link and of the wire")
                    .report();
            for (Case<ConductorSize> linkSize : sizesOf(link)) {
                for (Case<ConductorSize> size : wire.wire().sizes()) {
                    Condition when = fed.and(linkSize.when()).and(size.when());
                    if (!spares(linkSize.value(), size.value())) {
                        draft(wire, when, "link " + name(link))
                                .says("only a fusible link of " + linkSize.value() + " stands before wire "
                                        + wire.wire().label() + " of " + size.value() + ", which is too small for it")
                                .step(linkSize.value() + " link: spares wires at least " + LINK_STEPS
                                        + " gauge numbers larger (common practice); it never limits an overload")
                                .step(path(link, when))
                                .see(linkSize.span(), name(link))
                                .advise("give this wire a fuse of its own, or make it large enough for the link")
                                .report();
                    }
                }
            }
        }

        private static boolean spares(ConductorSize link, ConductorSize wire) {
            Optional<Integer> steps = link.system() == wire.system()
                    ? link.gaugeNumber().flatMap(of -> wire.gaugeNumber().map(gauge -> of - gauge)) : Optional.empty();
            return steps.map(count -> count >= LINK_STEPS)
                    .orElse(wire.areaMm2() >= LINK_RATIO * link.areaMm2());
        }

        private static List<Case<ConductorSize>> sizesOf(Edge link) {
            return switch (link.link()) {
                case Link.OfWire wire -> wire.wire().sizes();
                case Link.Inside inside -> inside.part().sizes().stream()
                        .map((Part.Size size) -> new Case<>(size.size(), link.when(), size.span())).limit(1).toList();
                default -> List.of();
            };
        }

        private static String name(Edge link) {
            return switch (link.link()) {
                case Link.OfWire wire -> "fusible link " + wire.wire().label();
                case Link.Inside inside -> "fusible link " + inside.holder().name();
                default -> "fusible link";
            };
        }
    }
}
