// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.loomwright.geometry.Distance;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Spot;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Ours.Setting;
import org.loomwright.harness.Ours.SettingKind;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;
import org.loomwright.quantity.CutTolerance;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Tolerance;
import org.loomwright.quantity.Unit;

/**
 * The settings of one harness: what it states for a place, else for all of itself, else the defaults. Of two statements
 * of the same the later one holds.
 */
public final class FitSettings {

    private final Wiring harness;
    private final Tolerance usual;
    private final FitDefaults defaults;
    private final Map<String, Measure> breakouts = new HashMap<>();

    /**
     * Reads the settings of a harness.
     *
     * @param tree its tree, for the default tolerance of its lengths
     */
    public FitSettings(HarnessTree tree, FitDefaults defaults) {
        this.harness = tree.view().wiring();
        this.usual = tree.usualTolerance();
        this.defaults = defaults;
        harness.runs().stream().flatMap(run -> run.breakouts().stream())
                .forEach(each -> breakouts.putIfAbsent(each.name().text(), each.at()));
    }

    /** Spare length needed to plug in and re-terminate. */
    public Length serviceLoop(String place) {
        return length(SettingKind.SERVICE_LOOP, place).orElse(defaults.serviceLoop());
    }

    /** Movement of an engine or hinge that the branch must follow. */
    public Length movement(String place) {
        return length(SettingKind.MOVEMENT, place).orElse(defaults.movement());
    }

    /** The longest length that the installer may have to dress back. */
    public Length excess(String place) {
        return length(SettingKind.EXCESS, place).orElse(defaults.excess());
    }

    /** How far a branch may run back along the trunk. */
    public Length doublingBack(String place) {
        return length(SettingKind.DOUBLING_BACK, place).orElse(defaults.doublingBack());
    }

    /** Least distance between two breakouts. */
    public Length spacing() {
        return length(SettingKind.SPACING, "").orElse(defaults.spacing());
    }

    /**
     * Tolerance of a branch as made: its own, else that of its place, of the harness's branches, of all its lengths,
     * else the default for its length.
     */
    public Tolerance made(Run branch, Length length) {
        Optional<Tolerance> own = branch.length().flatMap(Measure::tolerance)
                .or(() -> tolerance(SettingKind.BRANCH_TOLERANCE, branch.to().map(Ref::text).orElse("")));
        if (own.isPresent() || !harness.defaults().tolerance().isEmpty()) {
            return own.orElse(usual);
        }
        boolean inch = branch.length().flatMap(Measure::value).map(Quantity::unit)
                .filter(unit -> unit == Unit.IN || unit == Unit.FT).isPresent();
        CutTolerance table = inch ? defaults.branchInch() : defaults.branchMetric();
        return table.of(length);
    }

    /**
     * How far a breakout may be made from its station, either way. The dimensions of its chain that state a tolerance
     * add up; if one of them states none, the tolerance of the harness's breakouts is added once.
     */
    Length breakout(Spot breakout, String place, HarnessTree tree) {
        Length sum = Length.ZERO;
        boolean open = false;
        Optional<Spot> at = Optional.of(breakout);
        while (at.isPresent()) {
            Optional<Tolerance> own = stated(at.get());
            open |= own.isEmpty();
            sum = sum.plus(own.map(FitSettings::wider).orElse(Length.ZERO));
            at = at.get().after().flatMap(tree::breakout);
        }
        return open ? sum.plus(breakout(place)) : sum;
    }

    private Length breakout(String place) {
        Optional<Tolerance> own = tolerance(SettingKind.BREAKOUT_TOLERANCE, place);
        if (own.isEmpty() && harness.defaults().tolerance().isEmpty()) {
            return defaults.breakoutTolerance();
        }
        return wider(own.orElse(usual));
    }

    private Optional<Tolerance> stated(Spot spot) {
        return Optional.ofNullable(breakouts.get(spot.name())).flatMap(Measure::tolerance);
    }

    /** The wider side of a tolerance. */
    static Length wider(Tolerance tolerance) {
        return tolerance.minus().max(tolerance.plus());
    }

    private Optional<Length> length(SettingKind kind, String place) {
        return find(kind, place, setting -> setting.value().flatMap(Distance::usable));
    }

    private Optional<Tolerance> tolerance(SettingKind kind, String place) {
        return find(kind, place, Setting::tolerance);
    }

    private <T> Optional<T> find(SettingKind kind, String place, Function<Setting, Optional<T>> value) {
        List<Setting> all = harness.ours().settings().stream().filter(each -> each.kind() == kind).toList();
        Optional<T> there = all.stream()
                .filter(each -> each.place().map(Ref::text).filter(place::equals).isPresent())
                .flatMap(each -> value.apply(each).stream()).reduce((first, second) -> second);
        return there.or(() -> all.stream().filter(each -> each.place().isEmpty())
                .flatMap(each -> value.apply(each).stream()).reduce((first, second) -> second));
    }
}
