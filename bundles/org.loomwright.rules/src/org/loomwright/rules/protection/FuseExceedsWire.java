// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Protection;
import org.loomwright.electric.connection.Reach;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.SizeSystem;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A fuse that lets more current pass for ever than a wire behind it may carry. Every wire downstream counts, up to the
 * next protective device; fusible links do not end the search, since they never limit an overload.
 */
public final class FuseExceedsWire implements Rule<Target.OfNetwork> {

    private static final RuleInfo INFO = new RuleInfo("fuse-exceeds-wire", "Does every fuse spare the wires behind it?",
            Severity.ERROR, Kind.ENGINEERING, Scope.PROTECTION_TREE,
            "33 CFR 183.425 Table 5 for the wire; a fuse carries 1.1 times its rating for ever and 1.35 times for many"
                    + " minutes (from memory)");
    private static final String UNSTATED = "it has neither family nor basis, so that its rating may be the current"
            + " that it carries or the one that blows it";
    private static final String UNRATED = "its rating is not stated";
    private static final List<String> GAUGES = List.of("18", "16", "14", "12", "10", "8", "6", "4", "2", "1", "1/0",
            "2/0", "3/0", "4/0");
    private static final List<String> SECTIONS = List.of("0.75", "1", "1.5", "2.5", "4", "6", "10", "16", "25", "35",
            "50", "70", "95");

    private final Ampacity ampacity = Ampacity.cfr();

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
        Downstream downstream = new Downstream(target.connections());
        Overload overload = new Overload(ampacity);
        Bundles bundles = new Bundles(target.shapes());
        Map<SizeSystem, List<ConductorSize>> sizes = new EnumMap<>(SizeSystem.class);
        for (Edge edge : target.connections().edges()) {
            FuseView.of(edge).ifPresent(fuse -> {
                findings.checkCancelled();
                new OneFuse(target, downstream.of(fuse.edge()), fuse, overload, bundles, sizes,
                        findings).check();
            });
        }
    }

    /** The wires behind one fuse. */
    private static final class OneFuse {
        private final Target.OfNetwork target;
        private final Fitment fitment;
        private final boolean everything;
        private final Reach behind;
        private final FuseView fuse;
        private final Overload overload;
        private final Bundles bundles;
        private final Map<SizeSystem, List<ConductorSize>> sizes;
        private final Findings findings;
        private final Map<String, List<WireView>> unjudged = new LinkedHashMap<>();
        private final Map<String, Condition> unjudgedWhen = new LinkedHashMap<>();

        OneFuse(Target.OfNetwork target, Reach behind, FuseView fuse, Overload overload, Bundles bundles,
                Map<SizeSystem, List<ConductorSize>> sizes, Findings findings) {
            this.target = target;
            this.fitment = target.connections().fitment();
            this.behind = behind;
            this.everything = fuse.inside().holder().ours() || !fitment.ours();
            this.fuse = fuse;
            this.overload = overload;
            this.bundles = bundles;
            this.sizes = sizes;
            this.findings = findings;
        }

        void check() {
            SortedMap<Integer, Edge> reached = new TreeMap<>();
            behind.points().keySet().forEach(point -> target.connections().edgesAt(point)
                    .forEach(edge -> reached.put(edge.index(), edge)));
            for (Edge edge : reached.values()) {
                if (edge.link() instanceof Link.OfWire wire && edge.protection() == Protection.NONE && asked(wire)) {
                    Condition when = behind.at(edge.a()).or(behind.at(edge.b())).and(edge.when());
                    Condition lost = lost(wire, when);
                    for (Condition part : List.of(when.minus(lost), lost)) {
                        if (!part.isNever()) {
                            wire(wire, part);
                        }
                    }
                }
            }
            unjudged.forEach(this::note);
        }

        /** Where the way of a wire is not known, less is known of it than in the other vehicles. */
        private Condition lost(Link.OfWire wire, Condition when) {
            RoutedWire routed = bundles.shape(fitment.fitted().get(wire.wire().owner()).view()).route(wire.wire());
            return routed == null ? when.vehicles().none() : routed.lost().and(when);
        }

        /** With something of ours fitted, only what ours has a part in; the rest is asked with the factory's alone. */
        private boolean asked(Link.OfWire wire) {
            return everything || fitment.isOurs(wire.wire().owner());
        }

        private void wire(Link.OfWire wire, Condition when) {
            if (fuse.basis() == FuseView.Basis.UNSTATED) {
                notJudged(UNSTATED, wire.wire(), when);
                return;
            }
            notJudged(UNRATED, wire.wire(), when.and(fuse.unrated()));
            Circumstances around = Circumstances.of(fitment.fitted().get(wire.wire().owner()).view(), wire, when,
                    bundles);
            Condition sized = when.vehicles().none();
            for (Case<ConductorSize> size : wire.wire().sizes()) {
                sized = sized.or(size.when());
                Condition both = size.when().and(when);
                if (!overload.knows(size.value(), around)) {
                    notJudged("the table has no figure for such a wire", wire.wire(), both);
                } else if (!both.isNever()) {
                    size(wire.wire(), size, around, both);
                }
            }
            notJudged("not known: size", wire.wire(), when.minus(sized));
        }

        private void size(WireView wire, Case<ConductorSize> size, Circumstances around, Condition when) {
            Optional<Overload.Verdict> worst = Optional.empty();
            double largest = 0;
            for (Case<Double> rating : fuse.ratings()) {
                Condition both = rating.when().and(when);
                if (both.isNever()) {
                    continue;
                }
                Optional<Overload.Verdict> verdict = overload.judge(fuse, rating.value(), size.value(), around, both);
                if (verdict.isEmpty()) {
                    if (!around.unknown().isEmpty()) {
                        notJudged("not known: " + String.join(", ", around.unknown()), wire, both);
                    }
                    continue;
                }
                largest = Math.max(largest, rating.value());
                Overload.Verdict found = verdict.get();
                worst = Optional.of(worst.map(before -> Overload.worse(before, found)).orElse(found));
            }
            if (worst.isPresent()) {
                report(wire, size, around, worst.get(), largest);
            }
        }

        private void report(WireView wire, Case<ConductorSize> size, Circumstances around, Overload.Verdict verdict,
                double rating) {
            boolean judged = verdict.judged().isPresent();
            Optional<ConductorSize> larger = overload.larger(fuse, rating, around,
                    sizes.computeIfAbsent(size.value().system(), FuseExceedsWire::sizes));
            Span span = size.span().equals(Span.NONE) ? wire.wire().name().span() : size.span();
            Draft draft = findings.about(wire).when(verdict.when()).key(key())
                    .weighs(verdict.judged().orElse(Severity.NOTE))
                    .at(span, size.value() + " behind " + Figure.of(rating) + " A")
                    .see(fuse.inside().holder().name().span(), fuse.label())
                    .says(judged
                            ? fuse.label() + " of " + Figure.of(rating) + " A lets more current through wire "
                                    + wire.label() + " of " + size.value() + " than the wire may carry"
                            : "not judged: whether wire " + wire.label() + " of " + size.value() + " bears "
                                    + fuse.label() + " of " + Figure.of(rating)
                                    + " A rests on figures from memory only")
                    .advise(advice(verdict, larger));
            verdict.steps().get().forEach(draft::step);
            if (judged) {
                larger.ifPresent(next -> draft.guess("make wire " + wire.label() + " " + next,
                        findings.writing().replace(size.span(), size.value().toString(), next.toString())));
            }
            if (fuse.inside().holder().ours()) {
                draft.ours();
            }
            draft.report();
        }

        private static String advice(Overload.Verdict verdict, Optional<ConductorSize> larger) {
            double most = Math.floor(verdict.most() * 10) / 10;
            String fuse = most > 0 ? "fit a fuse of at most " + Figure.of(most) + " A"
                    : "no fuse spares this wire where it is: take a cable of a higher class, or lead it where it is"
                            + " cooler";
            return fuse + larger.map(next -> ", or a wire of at least " + next).orElse("")
                    + "; follow the wire maker's figures and local codes where they ask for more";
        }

        private String key() {
            return fuse.inside().holder().owner() + " " + fuse.label();
        }

        private void notJudged(String reason, WireView wire, Condition when) {
            if (!when.isNever()) {
                List<WireView> wires = unjudged.computeIfAbsent(reason, key -> new ArrayList<>());
                if (wires.stream().noneMatch(each -> each == wire)) {
                    wires.add(wire);
                }
                unjudgedWhen.merge(reason, when, Condition::or);
            }
        }

        private void note(String reason, List<WireView> wires) {
            Link.Holder holder = fuse.inside().holder();
            boolean own = reason.equals(UNSTATED) || reason.equals(UNRATED);
            Draft draft = findings.about(holder.owner(), holder.name().text(), fuse.label()).weighs(Severity.NOTE)
                    .when(unjudgedWhen.get(reason)).key(fuse.label() + " " + reason)
                    .at(holder.name().span(), "not judged")
                    .says(fuse.label() + " is not judged" + (own ? ""
                            : " against " + (wires.size() == 1 ? "wire " : "wires ") + labels(wires)) + "; " + reason)
                    .advise(own ? "state what is missing on the fuse's part in the catalogue"
                            : "state what is missing, then the wires can be judged");
            wires.forEach(wire -> draft.see(wire.wire().name().span(), "wire " + wire.label()));
            draft.report();
        }

        private static String labels(List<WireView> wires) {
            return wires.stream().map(WireView::label).collect(Collectors.joining(", "));
        }
    }

    /** The sizes of a system that are made, from the thinnest on. */
    private static List<ConductorSize> sizes(SizeSystem system) {
        return system == SizeSystem.METRIC ? SECTIONS.stream().map(ConductorSize::metric).toList()
                : GAUGES.stream().map(gauge -> new ConductorSize(system, gauge)).toList();
    }
}
