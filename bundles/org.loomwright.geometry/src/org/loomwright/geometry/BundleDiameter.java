// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Works out between what figures the diameter of a bundle of round wires lies. What the wires of a mixed bundle can be
 * packed into is searched on demand: {@link BundleSize#packed}, {@link BundleSize#fits}.
 *
 * <p>O(n log n). Adding a wire never makes the bound smaller. Sources: equal circles see {@link EqualCircles}; that
 * circles with half the section of a circle always fit into it: Fekete, Keldenich and Scheffer, Packing Disks into
 * Disks with Optimal Worst-Case Density, SoCG 2019.
 */
public final class BundleDiameter {

    /** The handbook's factor: D = 1.2 sqrt(sum d²). */
    private static final double RULE_FACTOR = 1.2;

    /** Wires of half the section of a circle fit into it. */
    private static final double HALF_SECTION = Math.sqrt(2);

    /** Wires within this share of each other count as equal: a billionth, for figures converted from inches. */
    private static final double EQUAL = 1e-9;

    /**
     * The size of a bundle.
     *
     * @param diametersMm outside diameters in mm, at least one, all positive
     * @throws IllegalArgumentException if there is no wire or one has no thickness
     */
    public BundleSize of(double... diametersMm) {
        double[] rising = diametersMm.clone();
        Arrays.sort(rising);
        if (rising.length == 0 || !(rising[0] > 0) || Double.isInfinite(rising[rising.length - 1])) {
            throw new IllegalArgumentException("a bundle has wires, and each has a thickness");
        }
        int n = rising.length;
        double largest = rising[n - 1];
        double root = Math.sqrt(DoubleStream.of(rising).map(d -> d * d).sum());
        List<BundleSize.Figure> figures = new ArrayList<>();
        figures.add(new BundleSize.Figure(largest, BundleSize.Method.LARGEST_WIRE));
        if (n > 1) {
            figures.add(new BundleSize.Figure(largest + rising[n - 2], BundleSize.Method.TWO_LARGEST));
        }
        figures.add(new BundleSize.Figure(root, BundleSize.Method.AREA));
        double packed = 0;
        for (int k = 1; k <= Math.min(n, EqualCircles.MOST); k++) {
            packed = Math.max(packed, EqualCircles.bound(k) * rising[n - k]);
        }
        figures.add(new BundleSize.Figure(packed, BundleSize.Method.PROVEN_PACKING));
        if (n <= EqualCircles.MOST && rising[0] >= largest * (1 - EQUAL)) {
            figures.add(new BundleSize.Figure(EqualCircles.known(n) * largest, BundleSize.Method.KNOWN_PACKING));
        }
        figures.add(new BundleSize.Figure(HALF_SECTION * root, BundleSize.Method.HALF_SECTION));
        figures.add(new BundleSize.Figure(RULE_FACTOR * root, BundleSize.Method.RULE));
        return new BundleSize(boxed(rising), figures);
    }

    /** One object for all wires of a thickness: a large harness has a million of them in its stretches. */
    private static List<Double> boxed(double[] rising) {
        Double[] boxes = new Double[rising.length];
        for (int i = 0; i < boxes.length; i++) {
            boxes[i] = i > 0 && boxes[i - 1] == rising[i] ? boxes[i - 1] : Double.valueOf(rising[i]);
        }
        return List.of(boxes);
    }
}
