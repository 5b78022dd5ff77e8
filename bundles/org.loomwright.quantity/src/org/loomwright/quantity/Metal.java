// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

/**
 * What a conductor is made of.
 *
 * @param rho20 resistivity at 20 C in ohm mm² / m
 * @param alpha20 temperature coefficient of resistance at 20 C, per kelvin
 * @param basis where the figures come from, for people
 */
public record Metal(double rho20, double alpha20, String basis) {
    /** Annealed copper: 1/58 ohm mm² / m and 0.00393 / K. */
    public static final Metal COPPER = new Metal(1.0 / 58.0, 0.003_93, "IEC 60028, annealed copper");

    public Metal {
        if (!(rho20 > 0) || !(alpha20 >= 0) || Double.isInfinite(rho20) || Double.isInfinite(alpha20)) {
            throw new IllegalArgumentException("no metal: rho " + rho20 + ", alpha " + alpha20);
        }
    }

    /** Returns R(T)/R(20 C) = 1 + alpha (T - 20). */
    public double factor(double celsius) {
        return 1 + alpha20 * (celsius - 20);
    }
}
