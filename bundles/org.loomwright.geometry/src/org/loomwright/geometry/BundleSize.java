// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.loomwright.geometry.packing.PackingCache;

/**
 * How thick a bundle is: what it cannot be thinner than, what it can be packed into, what the rule of thumb says, and
 * what it is taken for.
 *
 * @param diametersMm of the wires, rising, in mm
 * @param figures     every figure that was worked out, bounds first
 */
public record BundleSize(List<Double> diametersMm, List<Figure> figures) {

    /** Diameters within this share of each other count as equal when a bundle is held against a bore. */
    private static final double EQUAL = 1e-9;

    public BundleSize {
        diametersMm = List.copyOf(diametersMm);
        figures = List.copyOf(figures);
    }

    /** Number of wires. */
    public int wires() {
        return diametersMm.size();
    }

    /** How a figure was found. */
    public enum Method {
        /** Nothing is thinner than its thickest wire. */
        LARGEST_WIRE("thickest wire", Sort.BOUND),
        /** The two thickest wires lie side by side. */
        TWO_LARGEST("two thickest wires side by side", Sort.BOUND),
        /** The sections of the wires fit into that of the bundle. */
        AREA("sum of sections", Sort.BOUND),
        /** The thickest k wires hold k equal circles as thick as the thinnest of them. */
        PROVEN_PACKING("proven packing of equal circles", Sort.BOUND),
        /** The best known packing of equal circles; wires can be laid like that. */
        KNOWN_PACKING("best known packing of equal circles", Sort.PACKING),
        /** Wires that fill half of a circle at most can always be laid in it. */
        HALF_SECTION("twice the sum of sections always suffices", Sort.PACKING),
        /** The wires laid one after the other, the thickest first. */
        LAID_PACKING("wires laid one after the other", Sort.PACKING),
        /** The smallest packing that a search found. */
        FOUND_PACKING("packing found by search", Sort.PACKING),
        /** 1.2 times the root of the sum of squares. */
        RULE("1.2 x root of sum of squares", Sort.RULE);

        private enum Sort {
            BOUND, PACKING, RULE
        }

        private final String words;
        private final Sort sort;

        Method(String words, Sort sort) {
            this.words = words;
            this.sort = sort;
        }

        /** For people. */
        public String words() {
            return words;
        }

        /** True when no bundle of these wires can be thinner. */
        public boolean isBound() {
            return sort == Sort.BOUND;
        }

        /** True when the wires can be laid within that diameter. */
        public boolean isPacking() {
            return sort == Sort.PACKING;
        }
    }

    /** One diameter in mm and how it was found. */
    public record Figure(double mm, Method method) {
    }

    /** The greatest lower bound. */
    public Figure bound() {
        return figures.stream().filter(each -> each.method().isBound())
                .max(Comparator.comparingDouble(Figure::mm)).orElseThrow();
    }

    /** The rule of thumb, as it is printed in handbooks; may lie below the bound. */
    public Figure rule() {
        return figure(Method.RULE);
    }

    /** The least diameter into which the wires are known to go, from what was worked out so far. */
    public Figure ceiling() {
        return figures.stream().filter(each -> each.method().isPacking())
                .min(Comparator.comparingDouble(Figure::mm)).orElseThrow();
    }

    /**
     * The diameter to use: that of a packing where one is known or was found, else the rule, and never less than the
     * bound. Wires laid by hand may take more.
     */
    public Figure diameter() {
        Figure best = find(Method.KNOWN_PACKING).or(() -> find(Method.FOUND_PACKING)).orElseGet(this::rule);
        return best.mm() >= bound().mm() ? best : bound();
    }

    /**
     * The diameter of the smallest packing: the bound where it is reached, the known packing of equal wires, else the
     * packing that a search finds, which takes some hundredths of a second for twenty wires. Never below the bound.
     */
    public Figure packed(PackingCache cache) {
        if (wires() <= 2) {
            return bound();
        }
        Figure best = find(Method.KNOWN_PACKING).or(() -> find(Method.FOUND_PACKING)).orElseGet(() ->
                new Figure(cache.packed(diametersMm).diameter(), Method.FOUND_PACKING));
        return best.mm() > bound().mm() * (1 + EQUAL) ? best : bound();
    }

    /** This with the figure of the smallest packing, so that {@link #diameter} is that. */
    public BundleSize withPacking(PackingCache cache) {
        if (find(Method.KNOWN_PACKING).or(() -> find(Method.FOUND_PACKING)).isPresent()) {
            return this;
        }
        List<Figure> more = new ArrayList<>(figures);
        more.add(more.size() - 1, new Figure(packed(cache).mm(), Method.FOUND_PACKING));
        return new BundleSize(diametersMm, more);
    }

    /**
     * Whether the wires go through a round hole: decided by the bounds if they can, then by what is known to suffice,
     * then by wires laid quickly, and only then by the search.
     *
     * @param boreMm greater than 0
     */
    public BoreAnswer fits(double boreMm, PackingCache cache) {
        Figure bound = bound();
        if (boreMm < bound.mm() * (1 - EQUAL)) {
            return new BoreAnswer(boreMm, false, bound);
        }
        Figure ceiling = ceiling();
        if (goes(ceiling, boreMm) || find(Method.KNOWN_PACKING).isPresent()) {
            return new BoreAnswer(boreMm, goes(ceiling, boreMm), ceiling);
        }
        Figure laid = new Figure(cache.laid(diametersMm).diameter(), Method.LAID_PACKING);
        if (goes(laid, boreMm)) {
            return new BoreAnswer(boreMm, true, laid);
        }
        Figure packed = packed(cache);
        return new BoreAnswer(boreMm, goes(packed, boreMm), packed);
    }

    private static boolean goes(Figure packing, double boreMm) {
        return packing.mm() <= boreMm * (1 + EQUAL);
    }

    private Optional<Figure> find(Method method) {
        return figures.stream().filter(each -> each.method() == method).findFirst();
    }

    private Figure figure(Method method) {
        return find(method).orElseThrow();
    }
}
