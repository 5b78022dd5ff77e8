// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Spot;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Part;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Shapes;
import org.loomwright.rules.Target;

/** A splice in or close to an opening, a barrier (grommet, hole or hinge) or a stretch that flexes. */
public final class SpliceInFlexOrOpening implements Rule<Target.OfHarness> {

    /** A covering of this {@code type} is where the bundle has to bend in use. */
    private static final String FLEX = "flex";
    private static final RuleInfo INFO = new RuleInfo("splice-in-flex-or-opening",
            "Do splices keep clear of openings and of what flexes?", Severity.WARNING, Kind.ENGINEERING, Scope.HARNESS,
            Limit.SPLICE_CLEAR.basis());

    /** What a splice must keep clear of. */
    private record Obstacle(String words, Span span, Spot from, Spot to, Condition when) {
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfHarness> target() {
        return Target.OfHarness.class;
    }

    @Override
    public void check(Target.OfHarness target, Findings findings) {
        WiringView view = target.wiring();
        List<Obstacle> obstacles = obstacles(view, target.shapes());
        if (obstacles.isEmpty()) {
            return;
        }
        Limits limits = view.platform().limits();
        Length clear = limits.length(Limit.SPLICE_CLEAR);
        Shapes.Shape shape = target.shapes().of(view);
        for (WiringView.SpliceView splice : view.splices().values()) {
            for (Case<Spot> spot : shape.spots().of(splice.node())) {
                Condition rest = spot.when();
                for (Obstacle obstacle : obstacles) {
                    Condition when = rest.and(obstacle.when());
                    Optional<Length> apart = apart(shape.tree(), spot.value(), obstacle);
                    if (!when.isNever() && apart.filter(length -> length.compareTo(clear) < 0).isPresent()) {
                        report(splice, spot.value(), obstacle, apart.get(), when, limits, findings);
                        rest = rest.minus(when);
                    }
                }
            }
        }
    }

    /** Openings, then stretches that flex, then barriers, so that one spot that is both is called by its part. */
    private static List<Obstacle> obstacles(WiringView view, Shapes shapes) {
        List<Obstacle> all = new ArrayList<>();
        PlacedParts.of(view, shapes, part -> part.kind() == Part.Kind.OPENING)
                .forEach(each -> all.add(obstacle("opening ", each)));
        PlacedParts.of(view, shapes, part -> part.kind() == Part.Kind.COVERING
                && part.word(Part.WordKind.TYPE).filter(FLEX::equalsIgnoreCase).isPresent())
                .forEach(each -> all.add(obstacle("flexing ", each)));
        HarnessTree tree = shapes.of(view).tree();
        for (Run run : view.wiring().runs()) {
            for (Run.Barrier barrier : run.barriers()) {
                PlacedParts.spots(tree, run, barrier).forEach(spot -> all.add(new Obstacle("barrier "
                        + barrier.name(), barrier.name().span(), spot.value(), spot.value(), spot.when())));
            }
        }
        return all;
    }

    private static Obstacle obstacle(String sort, PlacedParts.At each) {
        return new Obstacle(sort + each.name(), each.placed().name().span(), each.from(), each.to(), each.when());
    }

    /** How far a spot is from an obstacle along the tree; nothing when it lies within. */
    private static Optional<Length> apart(HarnessTree tree, Spot spot, Obstacle obstacle) {
        Optional<Length> toFrom = tree.route(spot, obstacle.from()).length().length();
        Optional<Length> toEnd = tree.route(spot, obstacle.to()).length().length();
        Optional<Length> between = tree.route(obstacle.from(), obstacle.to()).length().length();
        if (toFrom.isEmpty() || toEnd.isEmpty() || between.isEmpty()) {
            return Optional.empty();
        }
        boolean within = toFrom.get().plus(toEnd.get()).equals(between.get());
        return Optional.of(within ? Length.ZERO : toFrom.get().min(toEnd.get()));
    }

    private static void report(WiringView.SpliceView splice, Spot spot, Obstacle obstacle, Length apart,
            Condition when, Limits limits, Findings findings) {
        Length clear = limits.length(Limit.SPLICE_CLEAR);
        String name = splice.splice().name().text();
        String where = apart.isZero() ? "in " + obstacle.words() : apart + " from " + obstacle.words();
        findings.about(splice.owner(), name, "splice " + name).when(when).key(obstacle.words())
                .at(splice.splice().name().span(), where)
                .see(obstacle.span(), obstacle.words() + " at " + obstacle.from().label())
                .see(limits.place(Limit.SPLICE_CLEAR), "the practice's limit")
                .says("splice " + name + " lies " + where)
                .step(spot.label() + " to " + obstacle.from().label()
                        + (obstacle.from().equals(obstacle.to()) ? "" : " .. " + obstacle.to().label()) + ": " + apart
                        + ", less than " + clear + " (" + limits.cite(Limit.SPLICE_CLEAR) + ")")
                .advise("move the splice until it is at least " + clear + " clear of it")
                .report();
    }
}
