// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.consequence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.consequence.Effect.Direction;
import org.loomwright.compare.consequence.Effect.Line;
import org.loomwright.compare.consequence.FitCells.Spot;
import org.loomwright.compare.consequence.FitCells.Worst;
import org.loomwright.compare.match.Matching;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitJudge;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Progress;

/**
 * What a revision does to the fit of each harness that both sides have: for each covered drawing and place the worst
 * geometry before and after, and the vehicles in which it is so now. Whether it still fits is for the rules to object
 * to; this tells by how much.
 */
public final class FitConsequence implements Consequence {

    private static final Comparator<Step> WORST = Comparator.comparing((Step step) -> !step.fails())
            .thenComparing(step -> step.gain().orElse(Length.ZERO)).thenComparing(step -> step.line().subject())
            .thenComparing(step -> step.line().what());

    private final FitCells cells;

    /** With a judge of fits and what holds where a harness states nothing. */
    public FitConsequence(FitJudge judge, FitDefaults defaults) {
        this.cells = new FitCells(judge, defaults);
    }

    /** What became of one spot. */
    private record Step(Line line, Spot spot, boolean fails, Optional<Length> gain) {
    }

    @Override
    public Effect of(Revision revision, Cancel cancel, Progress progress) {
        Matching matching = revision.comparison().matching();
        List<Step> steps = new ArrayList<>();
        for (WiringView before : revision.old().harnesses()) {
            Optional<WiringView> after = matching.after(new ItemId(Sort.WIRING, "", before.name()))
                    .flatMap(id -> revision.now().wiring(id.name())).filter(view -> view.wiring().isHarness());
            if (after.isPresent()) {
                progress.report("comparing the fit of " + after.get().name(), 0, 1);
                Map<Spot, Worst> then = cells.before(before, revision.old(), matching, cancel);
                cells.after(after.get(), revision.now(), cancel).forEach((spot, cell) ->
                        step(spot, then.get(spot), cell).ifPresent(steps::add));
            }
        }
        steps.sort(Comparator.comparing((Step step) -> step.line().direction()).thenComparing(WORST));
        return new Effect("fit", "fit margins", steps.stream().map(Step::line).toList(), headline(steps));
    }

    private static Optional<Step> step(Spot spot, Worst then, Worst now) {
        FitCell before = then == null ? null : then.cell();
        return step(spot, before, now.cell(), now.words());
    }

    private static Optional<Step> step(Spot spot, FitCell before, FitCell after, String vehicles) {
        Optional<Length> then = Optional.ofNullable(before).flatMap(FitCell::figures).map(FitCell.Figures::margin);
        Optional<Length> here = after.figures().map(FitCell.Figures::margin);
        Optional<Length> over = Optional.ofNullable(before).flatMap(FitCell::figures).map(FitCell.Figures::excess);
        Optional<Length> now = after.figures().map(FitCell.Figures::excess);
        boolean sameStatus = before != null && before.status() == after.status();
        if (sameStatus && then.equals(here) && over.equals(now)) {
            return Optional.empty();
        }
        boolean fails = after.status().isFailure() && (before == null || !before.status().isFailure());
        Optional<Length> gain = then.flatMap(old -> here.map(each -> each.minus(old)));
        Direction direction = before == null ? Direction.OTHER : !sameStatus
                ? after.status().compareTo(before.status()) > 0 ? Direction.WORSE : Direction.BETTER
                : gain.filter(Length::isNegative).isPresent() ? Direction.WORSE
                : after.status().isFailure() && gain.isPresent() ? Direction.BETTER : Direction.OTHER;
        boolean reach = gain.isEmpty() || gain.get().isNegative() || !sameStatus || over.equals(now);
        Optional<FitCell.Figures> old = Optional.ofNullable(before).flatMap(FitCell::figures);
        String status = sameStatus ? "" : "now " + after.status().words() + ", ";
        Line line = new Line(direction, spot.drawing() + " at " + spot.place(),
                status + (reach ? "reach left" : "to dress back"), old.map(each -> words(each, reach)).orElse(""),
                after.figures().map(each -> words(each, reach)).orElse(""), vehicles, Optional.empty());
        return Optional.of(new Step(line, spot, fails, gain));
    }

    private static String words(FitCell.Figures figures, boolean reach) {
        return (reach ? Millimetres.margin(figures.margin()) : Millimetres.excess(figures.excess())) + " mm";
    }

    private static Optional<String> headline(List<Step> steps) {
        return steps.stream().filter(step -> step.line().direction() == Direction.WORSE).min(WORST).map(step -> {
            Spot spot = step.spot();
            String change = step.line().before().replace(" mm", "") + " -> " + step.line().after();
            if (step.fails()) {
                return spot.drawing() + " no longer fits at " + spot.place() + " (" + change + ")";
            }
            return step.gain().isEmpty() ? spot.drawing() + " is " + step.line().what() + " at " + spot.place()
                    : spot.drawing() + " loses " + Millimetres.excess(step.gain().get().negated()) + " mm of reach at "
                            + spot.place() + " (" + change + ")";
        });
    }
}
