// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

/**
 * The quick answer: circles laid one after the other, the thickest first, each in the niche nearest to the centre.
 * Often a tenth above the best, now and then a seventh.
 *
 * <p>O(n²).
 */
public final class LaidPacking implements PackingSearch {

    @Override
    public Found search(double... diameters) {
        Proportions proportions = new Proportions(diameters);
        double[] radii = proportions.radii();
        Layer layer = new Layer(radii);
        double[] best = lay(layer, radii);
        return new Found(proportions.at(best), layer.work());
    }

    /** The better of two ways to begin: around the thickest circle, or around the two thickest. */
    static double[] lay(Layer layer, double[] radii) {
        double[] around = layer.lay(false);
        double[] between = layer.lay(true);
        return Proportions.radius(radii, between) <= Proportions.radius(radii, around) ? between : around;
    }
}
