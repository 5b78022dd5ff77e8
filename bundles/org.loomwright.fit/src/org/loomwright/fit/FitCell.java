// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.Optional;
import org.loomwright.harness.Span;
import org.loomwright.quantity.Length;

/**
 * A cell of the matrix. Where a drawing has several branches to one place, the worst of them.
 *
 * @param row         index of its row
 * @param column      index of its column
 * @param status      what came of it
 * @param requirement what was asked
 * @param figures     by how much; empty when the branch does not have to reach, or nothing can be concluded
 */
public record FitCell(int row, int column, FitStatus status, Requirement requirement, Optional<Figures> figures) {

    /**
     * How a branch comes to lie.
     *
     * @param margin   what is left of the shortest branch that may be made, all tolerances against it
     * @param excess   what may have to be dressed back of the longest branch, all tolerances for it
     * @param along    the run along the trunk, or the branch that it leaves, before the factory's branch leaves it
     * @param position where the breakout on the trunk lies in the vehicle
     * @param tuck     slack taken up before that breakout
     * @param demand   what all of it was worked out from
     */
    public record Figures(Length margin, Length excess, Length along, Length position, Length tuck, Demand demand) {
    }

    /** The place in these vehicles: that of the row, or where its function is instead. */
    public String place(FitRow row) {
        return requirement instanceof Requirement.Reach reach ? reach.demand().place() : row.place();
    }

    /** The harness's branch; empty for a place that it does not serve. */
    public Optional<Span> harnessSpan() {
        return switch (requirement) {
            case Requirement.Reach reach -> Optional.of(reach.demand().harnessSpan());
            case Requirement.Unproved unproved -> Optional.of(unproved.harnessSpan());
            case Requirement.Parked parked -> Optional.of(parked.harnessSpan());
            case Requirement.Elsewhere elsewhere -> Optional.of(elsewhere.harnessSpan());
            case Requirement.Unserved unserved -> Optional.empty();
        };
    }

    /** The drawing's branch; empty where the drawing has none. */
    public Optional<Span> factorySpan() {
        return switch (requirement) {
            case Requirement.Reach reach -> Optional.of(reach.demand().factorySpan());
            case Requirement.Unproved unproved -> Optional.of(unproved.factorySpan());
            case Requirement.Unserved unserved -> Optional.of(unserved.factorySpan());
            case Requirement.Parked parked -> Optional.empty();
            case Requirement.Elsewhere elsewhere -> Optional.empty();
        };
    }

    /** Why nothing can be concluded; empty when something can. */
    public Optional<Requirement.Reason> reason() {
        return requirement instanceof Requirement.Unproved unproved ? Optional.of(unproved.reason()) : Optional.empty();
    }
}
