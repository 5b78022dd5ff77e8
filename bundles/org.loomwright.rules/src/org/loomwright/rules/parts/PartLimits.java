// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

/**
 * What the rules of this package assume where the source states nothing.
 *
 * @param gaugeMargin      share by which the section of a gauge size may be off against a range in mm²
 * @param gaugeBasis       where that comes from
 * @param leastOfSupply    least design voltage of a device, as a share of the platform's nominal supply
 * @param mostOfSupply     greatest design voltage of a device, as a share of the platform's nominal supply
 * @param supplyBasis      where these come from
 * @param droppingOhms     least resistance in ohm that is taken for one that lowers the voltage of a device on purpose
 * @param droppingBasis    where that comes from
 */
record PartLimits(double gaugeMargin, String gaugeBasis, double leastOfSupply, double mostOfSupply,
        String supplyBasis, double droppingOhms, String droppingBasis) {

    /** The defaults. */
    static PartLimits usual() {
        return new PartLimits(0.10, "SAE sizes are 3 to 11 % under AWG of the same number, and ranges are rounded",
                0.75, 1.35, "common practice: published lamps of a system lie between 1.0 and 1.25 times its nominal"
                        + " voltage", 0.2, "common practice: contacts and fuses are far below, ballasts far above");
    }
}
