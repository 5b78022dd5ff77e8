// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.ArrayList;
import java.util.List;

/**
 * A spot in a vehicle, by the runs of its drawing that lead there from the datum: how far along the trunk, how far
 * along the branch that leaves there, and so on. The datum is station 0 of a run without a name. Offsets in nanometres.
 *
 * @param steps from the datum outwards, at least one
 */
public record VehiclePath(List<Step> steps) {

    /** How far along a run the path goes. */
    public record Step(String run, long offset) {
    }

    public VehiclePath {
        steps = List.copyOf(steps);
        if (steps.isEmpty()) {
            throw new IllegalArgumentException("a path has a step");
        }
    }

    /** A spot on a trunk; the datum for an empty name. */
    static VehiclePath of(String trunk, long offset) {
        return new VehiclePath(List.of(new Step(trunk, offset)));
    }

    /** Number of runs from the datum that both paths use. */
    int shared(VehiclePath other) {
        int count = 0;
        while (count < steps.size() && count < other.steps.size()
                && steps.get(count).run().equals(other.steps.get(count).run())) {
            count++;
        }
        return count;
    }

    private long beyond(int count) {
        return steps.stream().skip(count).mapToLong(Step::offset).sum();
    }

    /** The distance between two spots along the vehicle's runs; through the datum for spots on different trunks. */
    long distance(VehiclePath other) {
        int shared = shared(other);
        long onRun = shared == 0 ? 0
                : Math.abs(steps.get(shared - 1).offset() - other.steps.get(shared - 1).offset());
        return beyond(shared) + onRun + other.beyond(shared);
    }

    /** The spot that comes after some distance on the way to another; past it, the last run simply goes on. */
    VehiclePath towards(VehiclePath target, long distance) {
        int shared = shared(target);
        long left = distance;
        for (int i = steps.size() - 1; i >= shared; i--) {
            if (left <= steps.get(i).offset()) {
                return cut(steps, i, steps.get(i).offset() - left);
            }
            left -= steps.get(i).offset();
        }
        if (shared > 0) {
            long here = steps.get(shared - 1).offset();
            long there = target.steps.get(shared - 1).offset();
            if (left <= Math.abs(there - here)) {
                return cut(steps, shared - 1, here + Long.signum(there - here) * left);
            }
            left -= Math.abs(there - here);
        }
        for (int i = shared; i < target.steps.size() - 1; i++) {
            if (left <= target.steps.get(i).offset()) {
                return cut(target.steps, i, left);
            }
            left -= target.steps.get(i).offset();
        }
        int last = target.steps.size() - 1;
        return cut(target.steps, last, last < shared ? target.steps.get(last).offset() + left : left);
    }

    private static VehiclePath cut(List<Step> steps, int last, long offset) {
        List<Step> all = new ArrayList<>(steps.subList(0, last));
        all.add(new Step(steps.get(last).run(), offset));
        return new VehiclePath(all);
    }

    /** The part of the path on its first runs. */
    VehiclePath first(int count) {
        return new VehiclePath(steps.subList(0, count));
    }
}
