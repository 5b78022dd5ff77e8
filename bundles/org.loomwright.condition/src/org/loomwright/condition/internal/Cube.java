// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import java.util.Arrays;
import java.util.BitSet;

/** A set of members for each axis of a shape, none of them empty: the product of these sets is a set of points. */
public final class Cube {
    private final Shape shape;
    private final long[] words;

    private Cube(Shape shape, long[] words) {
        this.shape = shape;
        this.words = words;
    }

    /** Returns the cube of all points. */
    public static Cube all(Shape shape) {
        return new Cube(shape, shape.all());
    }

    /** Returns the cube of one point. */
    public static Cube of(Shape shape, int[] point) {
        long[] words = new long[shape.words()];
        for (int axis = 0; axis < point.length; axis++) {
            words[shape.start(axis) + (point[axis] >> 6)] |= 1L << point[axis];
        }
        return new Cube(shape, words);
    }

    /** Returns this cube with another set of members on one axis. */
    public Cube with(int axis, BitSet members) {
        long[] changed = words.clone();
        long[] set = members.toLongArray();
        for (int word = shape.start(axis); word < shape.start(axis + 1); word++) {
            int index = word - shape.start(axis);
            changed[word] = index < set.length ? set[index] : 0;
        }
        return new Cube(shape, changed);
    }

    /** Returns the points of this cube whose member on one axis is not in the other; null if there are none. */
    Cube cut(int axis, Cube other) {
        long[] changed = words.clone();
        long left = 0;
        for (int word = shape.start(axis); word < shape.start(axis + 1); word++) {
            changed[word] &= ~other.words[word];
            left |= changed[word];
        }
        return left == 0 ? null : new Cube(shape, changed);
    }

    /** Returns the smallest cube that holds both. */
    Cube hull(Cube other) {
        long[] joined = words.clone();
        for (int word = 0; word < joined.length; word++) {
            joined[word] |= other.words[word];
        }
        return new Cube(shape, joined);
    }

    /** Returns the smallest cube that holds this one and a point; this one if it holds it already. */
    Cube hull(int[] point) {
        return contains(point) ? this : hull(of(shape, point));
    }

    public Shape shape() {
        return shape;
    }

    /** Returns the members on an axis. */
    public BitSet members(int axis) {
        return BitSet.valueOf(Arrays.copyOfRange(words, shape.start(axis), shape.start(axis + 1)));
    }

    /** Returns whether the cube has every member of an axis. */
    public boolean isFull(int axis) {
        int count = 0;
        for (int word = shape.start(axis); word < shape.start(axis + 1); word++) {
            count += Long.bitCount(words[word]);
        }
        return count == shape.size(axis);
    }

    boolean contains(int[] point) {
        for (int axis = 0; axis < point.length; axis++) {
            if ((words[shape.start(axis) + (point[axis] >> 6)] >> point[axis] & 1) == 0) {
                return false;
            }
        }
        return true;
    }

    boolean contains(Cube other) {
        for (int word = 0; word < words.length; word++) {
            if ((other.words[word] & ~words[word]) != 0) {
                return false;
            }
        }
        return true;
    }

    boolean meets(Cube other) {
        for (int axis = 0; axis < shape.axes(); axis++) {
            if (!meets(other, axis)) {
                return false;
            }
        }
        return true;
    }

    private boolean meets(Cube other, int axis) {
        for (int word = shape.start(axis); word < shape.start(axis + 1); word++) {
            if ((words[word] & other.words[word]) != 0) {
                return true;
            }
        }
        return false;
    }

    /** Returns how many axes do not have all their members. */
    int narrowAxes() {
        int count = 0;
        for (int axis = 0; axis < shape.axes(); axis++) {
            count += isFull(axis) ? 0 : 1;
        }
        return count;
    }

    /**
     * Orders cubes axis by axis: a cube with all members comes after one without, else the cube with the first member
     * that the other lacks comes first.
     */
    static int compare(Cube left, Cube right) {
        for (int axis = 0; axis < left.shape.axes(); axis++) {
            int order = Boolean.compare(left.isFull(axis), right.isFull(axis));
            for (int word = left.shape.start(axis); order == 0 && word < left.shape.start(axis + 1); word++) {
                long different = left.words[word] ^ right.words[word];
                order = different == 0 ? 0 : (left.words[word] & Long.lowestOneBit(different)) != 0 ? -1 : 1;
            }
            if (order != 0) {
                return order;
            }
        }
        return 0;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Cube cube && Arrays.equals(words, cube.words);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(words);
    }
}
