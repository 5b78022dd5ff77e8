// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Allowance;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.ampacity.AmpacityTable;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.rules.Severity;

/**
 * Holds one wire against the current that one fuse lets pass: 1.1 times its rating for ever, 1.35 times for many
 * minutes.
 *
 * <p>The largest bundle is tried first; only when the wire fails in it are the vehicles parted by how many wires lie
 * beside it, which is exact and takes no list of combinations. What is not known is taken at its best, so that a
 * failure is one in any case. For one thread: what a size may carry is worked out once for each of its circumstances.
 */
final class Overload {

    /** A fuse carries this many times its continuous rating for ever (from memory). */
    static final double LASTING = 1.1;
    /** A fuse may carry this many times its continuous rating for many minutes (from memory). */
    static final double MINUTES = 1.35;
    /** Short-time limit above the temperature class, in K, where the cable states none (ISO 6722-1, from memory). */
    static final double SHORT_TIME_RISE = 50;
    /** The highest temperature class of the table in C, taken where no class is known. */
    private static final double BEST_CLASS = 200;

    /**
     * What came of it.
     *
     * @param weight how bad: current that passes over current allowed
     * @param when   the vehicles
     * @param judged what it weighs; empty when only figures from memory stand against the wire
     * @param most   the greatest continuous rating in A that the wire could bear
     * @param steps  makes the derivation
     */
    record Verdict(double weight, Condition when, Optional<Severity> judged, double most,
            Supplier<List<String>> steps) {
    }

    private record Asked(ConductorSize size, double classC, double ambientC, int wires) {
    }

    private final Ampacity ampacity;
    private final Map<Asked, Optional<Allowance>> allowances = new HashMap<>();

    Overload(Ampacity ampacity) {
        this.ampacity = ampacity;
    }

    /** Whether the table has a figure for such a wire. */
    boolean knows(ConductorSize size, Circumstances around) {
        return allowed(size, around.classC().orElse(BEST_CLASS), 0, 1).isPresent();
    }

    /** The worst that holds for a wire behind a fuse; empty when the wire bears it in all the vehicles. */
    Optional<Verdict> judge(FuseView fuse, double rating, ConductorSize size, Circumstances around, Condition when) {
        List<Bundle> bundles = around.bundles().filter(list -> !list.isEmpty())
                .orElse(List.of(new Bundle("", when, List.of(when))));
        Verdict worst = null;
        for (Bundle bundle : bundles) {
            int largest = bundle.wires().size();
            if (passes(fuse, rating, allowance(size, around, largest), around)) {
                continue;
            }
            Condition fails = when.vehicles().none();
            int most = 1;
            for (int step : Ampacity.bundleSteps()) {
                Condition many = bundle.atLeast(step).and(when);
                if (many.isNever() || step > largest) {
                    break;
                }
                most = step == 1 ? Math.min(largest, 2) : step;
                if (!passes(fuse, rating, allowance(size, around, step), around)) {
                    fails = fails.or(many);
                }
            }
            if (!fails.isNever()) {
                Verdict verdict = verdict(fuse, rating, allowance(size, around, most), around, bundle, fails);
                worst = worst == null ? verdict : worse(worst, verdict);
            }
        }
        return Optional.ofNullable(worst);
    }

    /**
     * The first of some sizes, which come from the thinnest on, that would bear the fuse in the bundle of the verdict;
     * empty when none would.
     */
    Optional<ConductorSize> larger(FuseView fuse, double rating, Circumstances around, List<ConductorSize> sizes) {
        int wires = around.bundles().orElse(List.of()).stream().mapToInt(bundle -> bundle.wires().size()).max()
                .orElse(1);
        return sizes.stream().filter(size -> knows(size, around))
                .filter(size -> passes(fuse, rating, allowance(size, around, wires), around)).findFirst();
    }

    /** Joins two verdicts on one wire: the vehicles of both, the derivation of the worse. */
    static Verdict worse(Verdict a, Verdict b) {
        Verdict worse = b.weight() > a.weight() ? b : a;
        Optional<Severity> judged = a.judged().isEmpty() ? b.judged()
                : b.judged().filter(each -> each.atLeast(a.judged().get())).or(a::judged);
        return new Verdict(worse.weight(), a.when().or(b.when()), judged, Math.min(a.most(), b.most()), worse.steps());
    }

    private Optional<Allowance> allowed(ConductorSize size, double classC, double ambientC, int wires) {
        return allowances.computeIfAbsent(new Asked(size, classC, ambientC, wires),
                key -> ampacity.allowed(size, classC, ambientC, wires));
    }

    private Allowance allowance(ConductorSize size, Circumstances around, int wires) {
        return allowed(size, around.classC().orElse(BEST_CLASS),
                around.ambientC().orElse((double) AmpacityTable.BASE_AMBIENT), wires).orElseThrow();
    }

    private static boolean passes(FuseView fuse, double rating, Allowance allowance, Circumstances around) {
        return fuse.forEver() * fuse.carried(rating) <= allowance.amps() && !hot(fuse, rating, allowance, around);
    }

    private static boolean hot(FuseView fuse, double rating, Allowance allowance, Circumstances around) {
        return allowance.temperature(MINUTES * fuse.carried(rating)) > limit(allowance, around);
    }

    private static double limit(Allowance allowance, Circumstances around) {
        return around.shortTime().orElse(allowance.rating() + SHORT_TIME_RISE);
    }

    private Verdict verdict(FuseView fuse, double rating, Allowance allowance, Circumstances around,
            Bundle bundle, Condition when) {
        double carried = fuse.carried(rating);
        double lasting = fuse.forEver() * carried;
        Optional<Severity> judged;
        if (lasting > allowance.amps()) {
            judged = carried > allowance.sureAmps() ? Optional.of(Severity.ERROR)
                    : lasting > allowance.sureAmps() ? Optional.of(Severity.WARNING) : Optional.empty();
        } else {
            judged = around.shortTime().map(stated -> Severity.WARNING);
        }
        double most = allowance.amps() / fuse.forEver() * (fuse.basis() == FuseView.Basis.BLOW ? 2 : 1);
        double weight = allowance.amps() == 0 ? Double.MAX_VALUE : lasting / allowance.amps();
        return new Verdict(weight, when, judged, most, () -> steps(fuse, rating, allowance, around, bundle));
    }

    private static List<String> steps(FuseView fuse, double rating, Allowance allowance, Circumstances around,
            Bundle bundle) {
        double carried = fuse.carried(rating);
        double lasting = fuse.forEver() * carried;
        List<String> steps = new ArrayList<>();
        steps.add(allowance.derivation());
        if (!around.zone().isEmpty()) {
            steps.add("zone " + around.zone() + ", the hottest that its way is known to touch");
        }
        if (bundle.wires().size() > 1) {
            steps.add("up to " + bundle.wires().size() + " wires lie together in " + bundle.words()
                    + "; each of them counts, since currents are not computed");
        }
        around.unknown().forEach(each -> steps.add(each + " is not known and is taken at its best"));
        steps.add(fuse.meaning(rating));
        if (lasting > allowance.amps()) {
            int decimals = Figure.of(lasting, 1).equals(Figure.of(allowance.amps(), 1)) ? 3 : 1;
            steps.add(Figure.of(carried) + " A x " + Figure.of(fuse.forEver(), fuse.resets() ? 2 : 1) + " ("
                    + fuse.why() + ") = " + Figure.of(lasting, decimals) + " A, more than "
                    + Figure.of(allowance.amps(), decimals) + " A");
        } else {
            steps.add(Figure.of(carried) + " A x " + Figure.of(MINUTES, 2) + " (carried for many minutes, from memory)"
                    + " heats the conductor to " + Figure.of(allowance.temperature(MINUTES * carried), 0)
                    + " C, above its short-time limit of " + Figure.of(limit(allowance, around), 0) + " C"
                    + (around.shortTime().isPresent() ? "" : " (class + 50 C after ISO 6722-1, from memory)"));
        }
        return steps;
    }
}
