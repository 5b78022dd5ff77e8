// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

/** How many members each of some axes has, and where a cube keeps them: each axis has words of its own. */
public final class Shape {
    private final int[] sizes;
    private final int[] starts;

    public Shape(int[] sizes) {
        this.sizes = sizes.clone();
        this.starts = new int[sizes.length + 1];
        for (int axis = 0; axis < sizes.length; axis++) {
            starts[axis + 1] = starts[axis] + (sizes[axis] + 63) / 64;
        }
    }

    public int axes() {
        return sizes.length;
    }

    public int size(int axis) {
        return sizes[axis];
    }

    int start(int axis) {
        return starts[axis];
    }

    int words() {
        return starts[sizes.length];
    }

    long[] all() {
        long[] words = new long[words()];
        for (int axis = 0; axis < sizes.length; axis++) {
            for (int left = sizes[axis], word = starts[axis]; left > 0; left -= 64, word++) {
                words[word] = left >= 64 ? -1L : (1L << left) - 1;
            }
        }
        return words;
    }
}
