// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Run;

/**
 * A trunk or branch in the tree.
 *
 * @param run    the snapshot
 * @param start  where it begins, on another run or at the datum
 * @param origin the same place, seen as station 0 of this run
 * @param points its breakouts, and for a branch its end, in order along it. Breakouts with an unknown station keep
 *               their place in the source, where order along a run counts
 * @param when   the vehicles that have it
 * @param depth  number of runs between it and the datum: 0 for a trunk and a branch that leaves the datum
 */
public record TreeRun(Run run, Spot start, Spot origin, List<Spot> points, Condition when, int depth) {

    public TreeRun {
        points = List.copyOf(points);
    }

    /** Name of the trunk or branch. */
    public String name() {
        return run.name().text();
    }

    /** The end of a branch; empty for a trunk, which ends at its last breakout. */
    public Optional<Spot> end() {
        return run.kind() == Run.Kind.BRANCH ? Optional.of(points.getLast()) : Optional.empty();
    }

    /** Start, points and end in order along the run. */
    public List<Spot> spots() {
        List<Spot> all = new ArrayList<>(points.size() + 1);
        all.add(origin);
        all.addAll(points);
        return List.copyOf(all);
    }
}
