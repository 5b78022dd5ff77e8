// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Protection;
import org.loomwright.electric.connection.Reach;
import org.loomwright.harness.Span;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A wire that a source can feed without a protective device between them. A fusible link counts as one; for which wires
 * is asked by {@link LinkDoesNotProtect}. Runs that may stand unfused leave a note.
 */
public final class NoProtection implements Rule<Target.OfNetwork> {

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
        private final Connections connections;
        private final Fitment fitment;
        private final Findings findings;
        private final UnfusedRuns allowed;
        private final Reach bare;

        Search(Target.OfNetwork target, Findings findings) {
            this.connections = target.connections();
            this.fitment = connections.fitment();
            this.findings = findings;
            OpenFeeds feeds = target.derived(OpenFeeds.class, OpenFeeds::new);
            this.allowed = new UnfusedRuns(feeds, target.shapes());
            this.bare = feeds.bare();
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
            return FeedPath.words(connections, edge, when, OpenFeeds.UNLIMITED, OpenFeeds.OPEN);
        }
    }
}
