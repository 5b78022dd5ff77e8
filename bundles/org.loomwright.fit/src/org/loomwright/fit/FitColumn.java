// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.quantity.Length;

/**
 * A column of the matrix: vehicles of one covered drawing that have the same branches, of drawing and harness. However
 * many they are, they count once.
 *
 * @param drawing      the drawing
 * @param vehicles     the vehicles
 * @param whole        true when these are all of the drawing's vehicles that the harness is for
 * @param trunks       the harness's trunks in these vehicles
 * @param requirements what is asked, by row in rising order
 */
public record FitColumn(String drawing, Condition vehicles, boolean whole, List<Trunk> trunks,
        List<Asked> requirements) {

    public FitColumn {
        trunks = List.copyOf(trunks);
        requirements = List.copyOf(requirements);
    }

    /** {@code front64}, {@code front64 (fogLamps)}. */
    public String label() {
        return whole ? drawing : drawing + " (" + vehicles.words() + ")";
    }

    /** A requirement of the row with that index. */
    public record Asked(int row, Requirement requirement) {
    }

    /**
     * A trunk of the harness.
     *
     * @param name  its name
     * @param stops its breakouts with a known station, by rising station
     */
    public record Trunk(String name, List<Stop> stops) {

        public Trunk {
            stops = List.copyOf(stops);
        }

        /** All slack that may be taken up. */
        public Length slack() {
            return stops.stream().map(Stop::slack).reduce(Length.ZERO, Length::plus);
        }
    }

    /**
     * A breakout on a trunk.
     *
     * @param breakout its name
     * @param station  its distance from the datum
     * @param slack    how much of the stretch before it may be taken up; not more than its length
     */
    public record Stop(String breakout, Length station, Length slack) {
    }
}
