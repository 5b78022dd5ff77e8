// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.marking;

/**
 * How a print legend lies on a wire.
 *
 * @param pitchMm  length that one character takes, with the gap behind it, in mm
 * @param hiddenMm length at each end that terminal, seal, housing or splice cover, in mm
 * @param basis    where these come from
 */
record PrintSettings(double pitchMm, double hiddenMm, String basis) {

    /** The defaults. */
    static PrintSettings usual() {
        return new PrintSettings(2.0, 15, "common practice");
    }

    /** The length of a legend in mm. */
    double length(String legend) {
        return pitchMm * legend.codePointCount(0, legend.length());
    }
}
