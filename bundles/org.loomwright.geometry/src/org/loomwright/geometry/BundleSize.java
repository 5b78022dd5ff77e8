// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.Comparator;
import java.util.List;

/**
 * How thick a bundle is: what it cannot be thinner than, what the rule of thumb says, and what it is taken for.
 *
 * @param wires   number of wires
 * @param figures every figure that was worked out, bounds first
 */
public record BundleSize(int wires, List<Figure> figures) {

    public BundleSize {
        figures = List.copyOf(figures);
    }

    /** How a figure was found. */
    public enum Method {
        /** Nothing is thinner than its thickest wire. */
        LARGEST_WIRE("thickest wire", true),
        /** The two thickest wires lie side by side. */
        TWO_LARGEST("two thickest wires side by side", true),
        /** The sections of the wires fit into that of the bundle. */
        AREA("sum of sections", true),
        /** The thickest k wires hold k equal circles as thick as the thinnest of them. */
        PROVEN_PACKING("proven packing of equal circles", true),
        /** The best known packing of equal circles; wires can be laid like that. */
        KNOWN_PACKING("best known packing of equal circles", false),
        /** 1.2 times the root of the sum of squares. */
        RULE("1.2 x root of sum of squares", false);

        private final String words;
        private final boolean bound;

        Method(String words, boolean bound) {
            this.words = words;
            this.bound = bound;
        }

        /** For people. */
        public String words() {
            return words;
        }

        /** True when no bundle of these wires can be thinner. */
        public boolean isBound() {
            return bound;
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

    /**
     * The diameter to use: a packing where one is known, else the rule, and never less than the bound.
     */
    public Figure diameter() {
        Figure best = figures.stream().filter(each -> each.method() == Method.KNOWN_PACKING).findFirst()
                .orElseGet(this::rule);
        return best.mm() >= bound().mm() ? best : bound();
    }

    private Figure figure(Method method) {
        return figures.stream().filter(each -> each.method() == method).findFirst().orElseThrow();
    }
}
