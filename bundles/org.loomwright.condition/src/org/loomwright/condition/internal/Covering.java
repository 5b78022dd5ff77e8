// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * Covers of a function by cubes: the least one where that can be proved, an irredundant one otherwise. Deterministic.
 * Not safe for use by several threads.
 */
public final class Covering {
    private static final long MOST_COMBINATIONS = 16_384;

    private final Diagram diagram;
    private final int possible;

    /**
     * @param possible the points that count; the others may be covered or not
     */
    public Covering(Diagram diagram, int possible) {
        this.diagram = diagram;
        this.possible = possible;
    }

    /**
     * Returns axes that suffice to tell the points of a function from the other possible ones; each of them is needed
     * when the others are kept. Axes are given up from the last to the first, halves at a time, so the effort grows
     * with the axes that stay times the logarithm of their number.
     */
    public int[] support(int node) {
        return new Support(node).axes();
    }

    /**
     * Covers a function that is neither empty nor true of all possible points.
     *
     * @param node the function, within the possible points
     * @param tied axes that are tied to the support by what is possible, and the support itself
     * @param literals what words cost; the index is that of the axis in the diagram
     */
    public Cover cover(int node, BitSet tied, Literals literals) {
        Optional<Cover> least = least(node, tied.stream().toArray(), literals, Cover.Quality.LEAST);
        if (least.isPresent()) {
            return least.get();
        }
        int[] support = support(node);
        return least(node, support, literals, Cover.Quality.LEAST_ON_SUPPORT).orElseGet(() -> {
            BitSet others = others(support);
            int wanted = diagram.without(node, others);
            int forbidden = diagram.without(diagram.minus(possible, node), others);
            Cover cover = new IrredundantCover(diagram, support, on(support, literals)).find(wanted, forbidden);
            return new Cover(support, cover.cubes(), cover.quality(), diagram.and(cover.left(), node));
        });
    }

    private Optional<Cover> least(int node, int[] axes, Literals literals, Cover.Quality quality) {
        long combinations = 1;
        for (int axis : axes) {
            combinations *= diagram.size(axis);
            if (combinations > MOST_COMBINATIONS) {
                return Optional.empty();
            }
        }
        BitSet others = others(axes);
        int wanted = diagram.without(node, others);
        int forbidden = diagram.without(diagram.minus(possible, node), others);
        LeastCover cover = new LeastCover(new Walk(diagram, axes), on(axes, literals));
        return cover.find(wanted, forbidden).map(found -> new Cover(axes, found, quality, Diagram.NONE));
    }

    private static Literals on(int[] axes, Literals literals) {
        return (axis, must, may) -> literals.cheapest(axes[axis], must, may);
    }

    private BitSet others(int[] axes) {
        BitSet others = new BitSet();
        others.set(0, diagram.axes());
        for (int axis : axes) {
            others.clear(axis);
        }
        return others;
    }

    /** The search for the axes that suffice. */
    private final class Support {
        private final BitSet kept = new BitSet();
        private int wanted;
        private int forbidden;

        Support(int node) {
            wanted = node;
            forbidden = diagram.minus(possible, node);
        }

        int[] axes() {
            giveUp(0, diagram.axes());
            return kept.stream().toArray();
        }

        private void giveUp(int from, int to) {
            if (from == to) {
                return;
            }
            BitSet axes = new BitSet();
            axes.set(from, to);
            int more = diagram.without(wanted, axes);
            int walls = diagram.without(forbidden, axes);
            if (diagram.and(more, walls) == Diagram.NONE) {
                wanted = more;
                forbidden = walls;
            } else if (to - from == 1) {
                kept.set(from);
            } else {
                int middle = (from + to) / 2;
                giveUp(middle, to);
                giveUp(from, middle);
            }
        }
    }
}
