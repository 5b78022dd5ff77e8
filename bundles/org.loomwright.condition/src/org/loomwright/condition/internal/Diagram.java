// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import org.logicng.knowledgecompilation.bdds.jbuddy.BDDConstruction;

/**
 * Boolean functions over points, where a point has one member of each axis. A function is an {@code int}, the number of
 * its node in a reduced ordered binary decision diagram; equal functions have equal numbers, {@link #NONE} is the empty
 * one.
 *
 * <p>The members of an axis are numbered in binary, the highest bit on top; the axes lie in the order given. Numbers
 * without a member are false in every function that this class returns, so counts are exact. Functions are kept until
 * the diagram is dropped. Not safe for use by several threads. Every method that makes functions may throw {@link
 * NodeLimit}.
 */
public final class Diagram {
    /** The function that is true nowhere. */
    public static final int NONE = 0;

    private static final int TRUE = 1;
    private static final int MOST_KNOWN_COUNTS = 200_000;

    private final int[] sizes;
    private final int[] firstBit;
    private final Kernel kernel;
    private final BDDConstruction build;
    private final int all;
    private final Map<Integer, BigInteger> counts = new HashMap<>();
    private int countsValidFor;
    private int[] kept = new int[1_024];
    private int keptCount;
    private long operations;

    /**
     * @param sizes how many members each axis has, at least one
     * @param mostNodes the most nodes that the diagram may hold
     */
    public Diagram(int[] sizes, int mostNodes) {
        this.sizes = sizes.clone();
        this.firstBit = new int[sizes.length + 1];
        for (int axis = 0; axis < sizes.length; axis++) {
            firstBit[axis + 1] = firstBit[axis] + Integer.SIZE - Integer.numberOfLeadingZeros(sizes[axis] - 1);
        }
        this.kernel = new Kernel(firstBit[sizes.length], mostNodes);
        this.build = new BDDConstruction(kernel);
        int every = TRUE;
        for (int axis = sizes.length - 1; axis >= 0; axis--) {
            every = keep(build.and(numbers(axis, full(axis), firstBit[axis], 0), every));
        }
        this.all = every;
        hold(all);
        release();
    }

    /** Returns the number of axes. */
    public int axes() {
        return sizes.length;
    }

    public int size(int axis) {
        return sizes[axis];
    }

    /** Returns the function that is true of every point. */
    public int all() {
        return all;
    }

    /** Returns the function that is true of the points with one of these members on an axis. */
    public int where(int axis, BitSet members) {
        return and(all, numbers(axis, members, firstBit[axis], 0));
    }

    /**
     * Returns the function over the bits of an axis from {@code bit} on, below the numbers that start with a prefix.
     */
    private int numbers(int axis, BitSet members, int bit, int prefix) {
        int bits = firstBit[axis + 1] - bit;
        int low = prefix << bits;
        int end = Math.min(low + (1 << bits), sizes[axis]);
        int next = members.nextSetBit(low);
        if (next < 0 || next >= end) {
            return NONE;
        }
        if (bits == 0 || members.nextClearBit(low) >= low + (1 << bits)) {
            return TRUE;
        }
        int zero = build.and(build.nithVar(bit), keep(numbers(axis, members, bit + 1, prefix << 1)));
        keep(zero);
        int one = keep(build.and(build.ithVar(bit), keep(numbers(axis, members, bit + 1, prefix << 1 | 1))));
        return keep(build.or(zero, one));
    }

    private BitSet full(int axis) {
        BitSet members = new BitSet();
        members.set(0, sizes[axis]);
        return members;
    }

    public int and(int left, int right) {
        operations++;
        return keep(build.and(left, right));
    }

    public int or(int left, int right) {
        operations++;
        return keep(build.or(left, right));
    }

    /** Returns the function that is true where the left one is and the right one is not. */
    public int minus(int left, int right) {
        operations++;
        return keep(build.and(left, keep(build.not(right))));
    }

    /** Returns the points that fall into the function when their members on some axes are changed at will. */
    public int without(int node, BitSet axes) {
        int variables = TRUE;
        for (int axis = axes.length() - 1; axis >= 0; axis--) {
            for (int bit = firstBit[axis + 1] - 1; axes.get(axis) && bit >= firstBit[axis]; bit--) {
                variables = keep(build.and(build.ithVar(bit), variables));
            }
        }
        operations++;
        return and(all, keep(build.exists(node, variables)));
    }

    /** Returns the function that is true of the points of a cube, whose shape has the axes listed. */
    public int where(Cube cube, int[] axes) {
        int node = all;
        for (int i = axes.length - 1; i >= 0; i--) {
            if (!cube.isFull(i)) {
                node = and(node, where(axes[i], cube.members(i)));
            }
        }
        return node;
    }

    /** Returns how many points the function is true of, exactly. Linear in the nodes that were not counted before. */
    public BigInteger count(int node) {
        if (countsValidFor != kernel.clearings() || counts.size() > MOST_KNOWN_COUNTS) {
            counts.clear();
            countsValidFor = kernel.clearings();
        }
        return countBelow(node).shiftLeft(level(node));
    }

    /** Counts over the bits from the level of the node down. */
    private BigInteger countBelow(int node) {
        if (node <= TRUE) {
            return BigInteger.valueOf(node);
        }
        BigInteger known = counts.get(node);
        if (known != null) {
            return known;
        }
        int low = build.bddLow(node);
        int high = build.bddHigh(node);
        int below = level(node) + 1;
        BigInteger count = countBelow(low).shiftLeft(level(low) - below)
                .add(countBelow(high).shiftLeft(level(high) - below));
        counts.put(node, count);
        return count;
    }

    /**
     * Returns a text that two functions over the same axes share exactly if they are the same, whatever was computed
     * before. Linear in the nodes of the function.
     */
    public String canonical(int node) {
        StringBuilder text = new StringBuilder();
        Map<Integer, Integer> numbers = new HashMap<>();
        numbers.put(0, 0);
        numbers.put(TRUE, TRUE);
        return text.append(canonical(node, numbers, text)).toString();
    }

    /** Writes what is below a node, then the node, and returns its number. */
    private int canonical(int node, Map<Integer, Integer> numbers, StringBuilder text) {
        Integer known = numbers.get(node);
        if (known != null) {
            return known;
        }
        int low = canonical(build.bddLow(node), numbers, text);
        int high = canonical(build.bddHigh(node), numbers, text);
        text.append(level(node)).append('?').append(high).append(':').append(low).append(' ');
        int number = numbers.size();
        numbers.put(node, number);
        return number;
    }

    /**
     * Returns what is left of a function when an axis has a member; meaningful only if no axis before it is left in the
     * function. The result has no meaning for the axis itself and must not be used as a function of all points.
     */
    int child(int node, int axis, int member) {
        int at = node;
        int end = firstBit[axis + 1];
        for (int bit = firstBit[axis]; bit < end && at > TRUE && build.bddVar(at) < end; bit++) {
            if (build.bddVar(at) == bit) {
                at = (member >> end - 1 - bit & 1) == 0 ? build.bddLow(at) : build.bddHigh(at);
            }
        }
        return at;
    }

    /** Returns whether no axis up to this one is left in a function that {@link #child} returned. */
    boolean isPast(int node, int axis) {
        return level(node) >= firstBit[axis + 1];
    }

    /**
     * Returns the members of the first point of a function, in the order of axes and members; null if there is none.
     */
    public int[] first(int node) {
        if (node == NONE) {
            return null;
        }
        int[] members = new int[sizes.length];
        int at = node;
        for (int axis = 0; axis < sizes.length; axis++) {
            int member = 0;
            while (child(at, axis, member) == NONE) {
                member++;
            }
            members[axis] = member;
            at = child(at, axis, member);
        }
        return members;
    }

    /** Returns how many nodes were ever made. */
    public long nodes() {
        return kernel.statistics().produced();
    }

    /** Returns how many operations were carried out. */
    public long operations() {
        return operations;
    }

    private int level(int node) {
        return node <= TRUE ? firstBit[sizes.length] : build.bddVar(node);
    }

    /** Keeps a node until the next release. */
    private int keep(int node) {
        if (node > TRUE) {
            kernel.addRef(node, null);
            kept = keptCount < kept.length ? kept : Arrays.copyOf(kept, 2 * keptCount);
            kept[keptCount++] = node;
        }
        return node;
    }

    /** Gives up every function that is not held. */
    public void release() {
        while (keptCount > 0) {
            kernel.delRef(kept[--keptCount]);
        }
    }

    /** Holds a function; as often as it is held it has to be dropped. */
    public void hold(int node) {
        kernel.addRef(node, null);
    }

    /** Takes back one {@link #hold}. */
    public void drop(int node) {
        kernel.delRef(node);
    }

    @Override
    public String toString() {
        return "diagram over " + Arrays.toString(sizes);
    }
}
