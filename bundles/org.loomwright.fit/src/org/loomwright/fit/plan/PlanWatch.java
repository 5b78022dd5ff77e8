// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Locale;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Progress;

/** Tells people how far the search along a trunk is: for each level what was found, and what it is at least. */
final class PlanWatch {

    /** Milligrams a metre times nanometres in a gram. */
    private static final double PER_GRAM = 1e12;

    private final Progress progress;
    private final String trunk;

    /**
     * @param trunk its name; empty when there is only one
     */
    PlanWatch(Progress progress, String trunk) {
        this.progress = progress;
        this.trunk = trunk.isEmpty() ? "" : trunk + ": ";
    }

    /** The largest excess in nanometres; {@link Long#MAX_VALUE} for none found yet. */
    void excess(long best, long least, long parts) {
        report(Objective.EXCESS, best == Long.MAX_VALUE, millimetres(best), least < 0 ? "" : millimetres(least), parts);
    }

    /** A sum, in mg/m times nanometres or in nanometres; {@link Long#MIN_VALUE} where nothing is known of the bound. */
    void sum(Objective sum, long best, long least, long parts) {
        report(sum, best == Long.MAX_VALUE, words(sum, best), least == Long.MIN_VALUE ? "" : words(sum, least), parts);
    }

    private void report(Objective level, boolean none, String best, String least, long parts) {
        progress.report(trunk + level.name().toLowerCase(Locale.ROOT) + " " + (none ? "not found yet" : best)
                + (least.isEmpty() ? "" : ", at least " + least), parts, 0);
    }

    private static String words(Objective sum, long value) {
        return sum == Objective.COPPER ? String.format(Locale.ROOT, "%.1f g", value / PER_GRAM) : millimetres(value);
    }

    private static String millimetres(long value) {
        return String.format(Locale.ROOT, "%.2f mm", new Length(value).toMillimetres());
    }
}
