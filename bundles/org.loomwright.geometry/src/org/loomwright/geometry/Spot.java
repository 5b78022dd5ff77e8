// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Span;

/**
 * A spot on the harness: on a run, at a distance from the start of that run.
 *
 * @param run     the trunk or branch that it lies on; empty for the datum
 * @param name    name of the breakout, of the branch whose end it is, or of the datum's place; empty for an unnamed
 *                station
 * @param kind    what it is
 * @param after   the breakout of the same run that its dimension is counted from; empty for the start of the run
 * @param links   number of dimensions between the start of the run and the spot
 * @param step    the last of these dimensions
 * @param station distance from the start of the run
 * @param when    the vehicles that have it
 * @param span    where its dimension is stated
 */
public record Spot(String run, String name, Kind kind, Optional<String> after, int links, Distance step,
        Distance station, Condition when, Span span) {

    /** What a spot is. */
    public enum Kind {
        /** Where the trunks are pinned in the vehicle. */
        DATUM,
        /** The start of a run; lies where its branch leaves another run. */
        START,
        /** A breakout. */
        BREAKOUT,
        /** The end of a branch. */
        END,
        /** A station that no breakout has: a splice, a clip. */
        STATION
    }

    /** The same spot in those of its vehicles that are among some. */
    Spot in(Condition vehicles) {
        return new Spot(run, name, kind, after, links, step, station, when.and(vehicles), span);
    }

    /** The same for equal spots; of what tells spots of one harness apart. */
    @Override
    public int hashCode() {
        return (run.hashCode() * 31 + name.hashCode()) * 31 + span.offset() * 7 + kind.ordinal();
    }

    /** {@code leftWing}; {@code main at 300 mm} for a station without a name. */
    public String label() {
        return name.isEmpty() ? run + " at " + station.length().map(Object::toString).orElse("unknown") : name;
    }

    @Override
    public String toString() {
        return label();
    }
}
