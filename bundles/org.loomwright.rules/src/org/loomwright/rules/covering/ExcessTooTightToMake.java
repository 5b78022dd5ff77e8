// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.fit.Demand;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitRow;
import org.loomwright.fit.FitStatus;
import org.loomwright.geometry.CutSettings;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * An excess limit that the tolerances alone use up, so that no length of the branch suits even one vehicle.
 *
 * <p>Margin and excess of one branch in one vehicle differ by tm + tp + 2a, whatever its length. Where the margin may
 * not be negative, the excess is at least that; and lengths come in steps of the cutting grid.
 */
public final class ExcessTooTightToMake implements Rule<Target.OfHarness> {

    private static final RuleInfo INFO = new RuleInfo("excess-too-tight-to-make",
            "Do the tolerances leave room under the excess limit?", Severity.ERROR, Kind.ENGINEERING, Scope.HARNESS,
            "arithmetic of fit (docs/fit.md): a stiff vehicle always fits alone where the limit is at least tm + tp +"
                    + " 2a + grid - 0.05 mm");
    /** The unit in which fit counts. */
    private static final Length UNIT = new Length(50_000);

    /** The tightest demand on a branch, and all vehicles in which it is too tight. */
    private record Tight(Demand demand, String drawing, boolean never, Condition when) {

        Length spread() {
            return ExcessTooTightToMake.spread(demand);
        }
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
        WiringView harness = target.wiring();
        if (harness.covers().isEmpty()) {
            return;
        }
        Length grid = CutSettings.usual().of(harness).grid();
        FitReport report = target.shapes().fit(harness);
        Map<FitRow, Tight> tight = new LinkedHashMap<>();
        for (FitCell cell : report.cells()) {
            if (cell.figures().isPresent()) {
                Demand demand = cell.figures().get().demand();
                Length limit = demand.excessLimit();
                boolean never = isNever(demand);
                boolean lucky = cell.status() == FitStatus.FITS;
                if (never || !lucky && limit.compareTo(spread(demand).plus(grid).minus(UNIT)) < 0) {
                    var column = report.problem().columns().get(cell.column());
                    tight.merge(report.problem().rows().get(cell.row()),
                            new Tight(demand, column.drawing(), never, column.vehicles()), ExcessTooTightToMake::join);
                }
            }
        }
        tight.forEach((row, each) -> report(harness, row, each, grid, findings));
    }

    private static String own(WiringView harness) {
        return harness.platform().limits().place(Limit.EXCESS).equals(Span.NONE) ? "default, " : "";
    }

    private static Tight join(Tight one, Tight other) {
        Tight tighter = other.spread().compareTo(one.spread()) > 0 ? other : one;
        return new Tight(tighter.demand(), tighter.drawing(), tighter.never(), one.when().or(other.when()));
    }

    /** True where the tolerances alone use up the limit, so that no length suits. */
    static boolean isNever(Demand demand) {
        return demand.excessLimit().compareTo(spread(demand)) < 0;
    }

    /** tm + tp + 2a. */
    private static Length spread(Demand demand) {
        return demand.madeTolerance().minus().plus(demand.madeTolerance().plus()).plus(demand.reachAllowance())
                .plus(demand.excessAllowance());
    }

    private static void report(WiringView harness, FitRow row, Tight tight, Length grid, Findings findings) {
        Demand demand = tight.demand();
        Optional<Ours.Setting> setting = setting(harness, demand.place());
        Length least = tight.spread().plus(grid).minus(UNIT);
        Span branch = harness.run(row.branch()).map(run -> run.name().span()).orElse(row.span());
        findings.about(harness.name(), row.branch(), "branch " + row.branch()).when(tight.when())
                .weighs(tight.never() ? INFO.severity() : Severity.WARNING)
                .at(branch, tight.never() ? "no length fits" : "hardly any length fits")
                .see(setting.map(Ours.Setting::span).orElse(Span.NONE), "the limit")
                .see(demand.factorySpan(), "the factory's branch")
                .says((tight.never() ? "no length of branch " : "perhaps no length of branch ") + row.branch()
                        + " keeps within " + demand.excessLimit() + " of excess at " + demand.place() + " as "
                        + tight.drawing() + " has it")
                .step(demand.madeTolerance().minus() + " made shorter + " + demand.madeTolerance().plus()
                        + " made longer + " + demand.reachAllowance() + " + " + demand.excessAllowance()
                        + " tolerances both ways = " + tight.spread())
                .step(tight.spread() + " + grid " + grid + " - " + UNIT + " = " + least + ", more than "
                        + demand.excessLimit() + (setting.isPresent() ? ""
                                : " (" + own(harness) + harness.platform().limits().cite(Limit.EXCESS) + ")"))
                .advise("allow an excess of at least " + least + " with: excessAtMost ... at " + demand.place()
                        + "; or make the branch and its breakout more exactly")
                .report();
    }

    /** Where the limit for a place is stated: for the place, else for the harness. */
    private static Optional<Ours.Setting> setting(WiringView harness, String place) {
        var all = harness.wiring().ours().settings().stream()
                .filter(each -> each.kind() == Ours.SettingKind.EXCESS).toList();
        return all.stream().filter(each -> each.place().map(Ref::text).filter(place::equals).isPresent())
                .reduce((first, second) -> second)
                .or(() -> all.stream().filter(each -> each.place().isEmpty()).reduce((first, second) -> second));
    }
}
