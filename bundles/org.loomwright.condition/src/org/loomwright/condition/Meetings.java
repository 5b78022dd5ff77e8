// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;

/**
 * Which of many conditions have vehicles in common. Halves of halves are asked whether they have any at all, so that n
 * conditions of which few meet take about n log n questions, where each with each would take n squared.
 */
public final class Meetings {

    /** Told of two that meet. */
    @FunctionalInterface
    private interface Met {
        void meet(int one, int other);
    }

    /** Some neighbours, the vehicles of any of them, and the halves; a single one has none. */
    private record Part(int first, int end, Condition any, Part left, Part right) {
        boolean isOne() {
            return end - first == 1;
        }
    }

    private final List<Condition> conditions;
    private final int[] home;
    private final boolean onlyGroups;
    private final Met met;

    private Meetings(List<Condition> conditions, boolean onlyGroups, Met met) {
        this.conditions = conditions;
        this.onlyGroups = onlyGroups;
        this.met = met;
        home = new int[conditions.size()];
        for (int i = 0; i < home.length; i++) {
            home[i] = i;
        }
        if (!conditions.isEmpty()) {
            within(part(0, conditions.size()));
        }
    }

    /**
     * Groups conditions that meet directly or through others of their group. That all meet takes hardly more questions.
     *
     * @return the groups, each as places in the list, in order of their first ones
     * @throws TooManyCombinations if there is no room for the vehicles of several
     */
    public static List<BitSet> groups(List<Condition> conditions) {
        Meetings meetings = new Meetings(conditions, true, (one, other) -> { });
        BitSet[] groups = new BitSet[conditions.size()];
        List<BitSet> inOrder = new ArrayList<>();
        for (int i = 0; i < groups.length; i++) {
            int first = meetings.first(i);
            if (groups[first] == null) {
                groups[first] = new BitSet();
                inOrder.add(groups[first]);
            }
            groups[first].set(i);
        }
        return inOrder;
    }

    /**
     * Lists all pairs that meet.
     *
     * @return for each its places in the list, the smaller first; in order of the greater, then of the smaller
     * @throws TooManyCombinations if there is no room for the vehicles of several
     */
    public static List<int[]> pairs(List<Condition> conditions) {
        List<int[]> pairs = new ArrayList<>();
        new Meetings(conditions, false,
                (one, other) -> pairs.add(new int[] {Math.min(one, other), Math.max(one, other)}));
        pairs.sort(Comparator.<int[]>comparingInt(pair -> pair[1]).thenComparingInt(pair -> pair[0]));
        return pairs;
    }

    private Part part(int first, int end) {
        if (end - first == 1) {
            return new Part(first, end, conditions.get(first), null, null);
        }
        int middle = first + end >>> 1;
        Part left = part(first, middle);
        Part right = part(middle, end);
        return new Part(first, end, left.any.or(right.any), left, right);
    }

    private void within(Part part) {
        if (!part.isOne()) {
            within(part.left);
            within(part.right);
            across(part.left, part.right);
        }
    }

    private void across(Part one, Part other) {
        if (onlyGroups && isOneGroup(one, other) || one.any.excludes(other.any)) {
            return;
        }
        if (one.isOne() && other.isOne()) {
            met.meet(one.first, other.first);
            int first = first(one.first);
            int later = first(other.first);
            home[Math.max(first, later)] = Math.min(first, later);
        } else if (other.isOne() || !one.isOne() && one.end - one.first >= other.end - other.first) {
            across(one.left, other);
            across(one.right, other);
        } else {
            across(one, other.left);
            across(one, other.right);
        }
    }

    private boolean isOneGroup(Part one, Part other) {
        int group = first(one.first);
        for (int i = one.first; i < one.end; i++) {
            if (first(i) != group) {
                return false;
            }
        }
        for (int i = other.first; i < other.end; i++) {
            if (first(i) != group) {
                return false;
            }
        }
        return true;
    }

    /** The first of the group of one. */
    private int first(int one) {
        int at = one;
        while (home[at] != at) {
            home[at] = home[home[at]];
            at = home[at];
        }
        return at;
    }
}
