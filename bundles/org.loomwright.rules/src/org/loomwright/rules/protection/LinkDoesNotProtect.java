// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Protection;
import org.loomwright.electric.connection.Reach;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A wire that only a fusible link stands before, and that is too thin for it. A link clears a short circuit for wires
 * at least four gauge numbers larger; every thinner branch behind it needs a fuse of its own, but for the runs that may
 * stand without any ({@link UnfusedRuns}), which leave a note.
 */
public final class LinkDoesNotProtect implements Rule<Target.OfNetwork> {

    /** A link is this many gauge numbers smaller than the wire that it protects (common practice). */
    private static final int STEPS = 4;
    /** The same as a ratio of cross-sections: four steps of AWG, 92^(8/39) = 2.53, rounded down. */
    private static final double RATIO = 2.5;
    private static final RuleInfo INFO = new RuleInfo("link-does-not-protect",
            "Does every fusible link protect the wires behind it?", Severity.ERROR, Kind.ENGINEERING,
            Scope.PROTECTION_TREE, "common practice: a link protects wire at least four gauge numbers larger, 2.5 times"
                    + " its section; four steps of ASTM B258 are 2.53");

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
        Connections connections = target.connections();
        List<Edge> links = connections.edges().stream().filter(edge -> edge.protection() == Protection.LINK).toList();
        if (links.isEmpty()) {
            return;
        }
        OpenFeeds feeds = target.derived(OpenFeeds.class, OpenFeeds::new);
        Reach bare = feeds.bare();
        UnfusedRuns allowed = new UnfusedRuns(feeds, target.shapes());
        links.forEach(link -> {
            findings.checkCancelled();
            new OneLink(connections, bare, allowed, link, findings).check();
        });
    }

    /** The wires behind one link, up to the next protective device. */
    private record OneLink(Connections connections, Reach bare, UnfusedRuns allowed, Edge link, Findings findings) {

        void check() {
            Map<Point, Condition> starts = new LinkedHashMap<>();
            starts.put(link.b(), bare.at(link.a()).and(link.when()));
            starts.put(link.a(), bare.at(link.b()).and(link.when()));
            Reach behind = connections.from(starts, edge -> OpenFeeds.OPEN.test(edge) && !edge.isGround());
            Fitment fitment = connections.fitment();
            for (Edge edge : connections.edges()) {
                if (edge.link() instanceof Link.OfWire wire && OpenFeeds.OPEN.test(edge)
                        && (!fitment.ours() || fitment.isOurs(wire.wire().owner()))) {
                    Condition fed = behind.at(edge.a()).or(behind.at(edge.b())).and(edge.when())
                            .minus(bare.at(edge.a())).minus(bare.at(edge.b()));
                    if (!fed.isNever()) {
                        wire(edge, wire, fed);
                    }
                }
            }
        }

        private void wire(Edge edge, Link.OfWire of, Condition fed) {
            WireView wire = of.wire();
            List<UnfusedRuns.Run> runs = allowed.of(edge, of, fed).stream().filter(UnfusedRuns.Run::stands).toList();
            Condition unknown = fed;
            for (Case<ConductorSize> linkSize : sizes()) {
                for (Case<ConductorSize> size : wire.sizes()) {
                    Condition when = fed.and(linkSize.when()).and(size.when());
                    unknown = unknown.minus(when);
                    if (!spares(linkSize.value(), size.value())) {
                        thin(wire, runs, linkSize, size, when);
                    }
                }
            }
            draft(wire, unknown, "unsized").weighs(Severity.NOTE)
                    .says("wire " + wire.label() + " is not judged; only " + name()
                            + " stands before it, and the size of one of them is not known")
                    .advise("state the size of the link and of the wire")
                    .report();
        }

        private void thin(WireView wire, List<UnfusedRuns.Run> runs, Case<ConductorSize> linkSize,
                Case<ConductorSize> size, Condition when) {
            Condition rest = when;
            for (UnfusedRuns.Run run : runs) {
                sized(wire, linkSize, rest.and(run.when()), "unfused").weighs(Severity.NOTE)
                        .says("wire " + wire.label() + " of " + size.value() + " stands without protection behind a"
                                + " fusible link of " + linkSize.value() + ", since " + run.reason())
                        .advise("list it on the cover sheet; check that nothing can chafe it")
                        .report();
                rest = rest.minus(run.when());
            }
            sized(wire, linkSize, rest, "thin")
                    .says("only a fusible link of " + linkSize.value() + " stands before wire " + wire.label() + " of "
                            + size.value() + ", which is too small for it")
                    .advise("give this wire a fuse of its own, or make it large enough for the link")
                    .report();
        }

        private Draft sized(WireView wire, Case<ConductorSize> linkSize, Condition when, String key) {
            Draft draft = draft(wire, when, key)
                    .step(linkSize.value() + " link: spares wires at least " + STEPS
                            + " gauge numbers larger (common practice); it never limits an overload")
                    .see(linkSize.span(), name());
            return when.isNever() ? draft : draft.step(
                    FeedPath.words(connections, link, when, OpenFeeds.UNLIMITED, OpenFeeds.OPEN));
        }

        private Draft draft(WireView wire, Condition when, String key) {
            Span name = wire.wire().name().span();
            return findings.about(wire).when(when).key(key + " " + name())
                    .at(name.equals(Span.NONE) ? wire.wire().span() : name, "behind " + name());
        }

        private List<Case<ConductorSize>> sizes() {
            return switch (link.link()) {
                case Link.OfWire wire -> wire.wire().sizes();
                case Link.Inside inside -> inside.part().sizes().stream()
                        .map((Part.Size size) -> new Case<>(size.size(), link.when(), size.span())).limit(1).toList();
                default -> List.of();
            };
        }

        private String name() {
            return switch (link.link()) {
                case Link.OfWire wire -> "fusible link " + wire.wire().label();
                case Link.Inside inside -> "fusible link " + inside.holder().name();
                default -> "fusible link";
            };
        }
    }

    /** Whether a wire is large enough for a link. */
    private static boolean spares(ConductorSize link, ConductorSize wire) {
        Optional<Integer> steps = link.system() == wire.system()
                ? link.gaugeNumber().flatMap(of -> wire.gaugeNumber().map(gauge -> of - gauge)) : Optional.empty();
        return steps.map(count -> count >= STEPS).orElse(wire.areaMm2() >= RATIO * link.areaMm2());
    }
}
