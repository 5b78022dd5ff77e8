// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

/**
 * Bounds of a current in A.
 *
 * @param least not more than any
 * @param most  not less than any
 */
record Range(double least, double most) {

    Range plus(Range other) {
        return new Range(least + other.least, most + other.most);
    }

    Range or(Range other) {
        return new Range(Math.min(least, other.least), Math.max(most, other.most));
    }

    /** Returns whether another lies in this one, but for a small excess in A and as a share of the current. */
    boolean holds(Range other, double excess) {
        return other.least >= least - excess * (1 + Math.abs(least)) && other.most <= most + excess * (1 + Math.abs(
                most));
    }
}
