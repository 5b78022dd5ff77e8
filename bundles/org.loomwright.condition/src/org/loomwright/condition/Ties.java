// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.Arrays;
import java.util.BitSet;

/** Which axes constraints tie to each other, directly or through others. */
final class Ties {
    private final int[] parents;

    Ties(int axes) {
        this.parents = new int[axes];
        Arrays.setAll(parents, axis -> axis);
    }

    /** Ties some axes to each other. */
    void tie(BitSet axes) {
        int first = axes.nextSetBit(0);
        axes.stream().forEach(axis -> parents[root(axis)] = root(first));
    }

    /** Returns some axes and all that are tied to one of them. */
    BitSet tiedTo(int[] axes) {
        BitSet roots = new BitSet();
        Arrays.stream(axes).forEach(axis -> roots.set(root(axis)));
        BitSet tied = new BitSet();
        for (int axis = 0; axis < parents.length; axis++) {
            tied.set(axis, roots.get(root(axis)));
        }
        return tied;
    }

    private int root(int axis) {
        int root = axis;
        while (parents[root] != root) {
            root = parents[root];
        }
        parents[axis] = root;
        return root;
    }
}
