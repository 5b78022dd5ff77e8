// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Tolerance;

/**
 * What only a harness of ours has.
 *
 * @param covers   the drawings that it replaces
 * @param settings lengths and limits of making and fitting, each for the whole harness or for one place
 * @param caps     branches that some vehicles do not use
 * @param order    the order of objectives when it is planned; empty for the default
 */
public record Ours(List<Ref> covers, List<Setting> settings, List<Cap> caps, List<Objective> order) {

    /** A drawing has none of it. */
    public static final Ours NONE = new Ours(List.of(), List.of(), List.of(), List.of());

    /** What can be set. */
    public enum SettingKind {
        /** Spare length needed to plug in and re-terminate. */
        SERVICE_LOOP,
        /** Movement of an engine or hinge that the branch must follow. */
        MOVEMENT,
        /** Largest length that the installer may have to dress back. */
        EXCESS,
        /** Steps of the cutting machine. */
        GRID,
        /** Least distance between breakouts. */
        SPACING,
        /** How far a branch may run back along the trunk. */
        DOUBLING_BACK,
        /** Tolerance of a branch as made. */
        BRANCH_TOLERANCE,
        /** Tolerance of a breakout as made. */
        BREAKOUT_TOLERANCE
    }

    /**
     * One setting.
     *
     * @param value     the length, for all kinds but the two tolerances
     * @param tolerance the tolerance, for those two
     * @param place     the place that it is for; empty for the whole harness
     */
    public record Setting(SettingKind kind, Optional<Quantity> value, Optional<Tolerance> tolerance,
            Optional<Ref> place, Span span) {
    }

    /** A branch that is capped in some vehicles, where it is parked, and how long it may be to be parked there. */
    public record Cap(Ref branch, Optional<Ref> parkedAt, Optional<Quantity> within, Expression when, Span span) {
    }

    /** What planning minimises. */
    public enum Objective {
        EXCESS, COPPER, LENGTH
    }
}
