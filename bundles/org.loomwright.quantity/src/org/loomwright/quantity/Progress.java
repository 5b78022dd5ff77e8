// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

/** Where a long computation says how far it is. May be called from any of its threads. */
@FunctionalInterface
public interface Progress {
    /** Progress that nobody looks at. */
    Progress NONE = (what, done, total) -> { };

    /**
     * Reports a step.
     *
     * @param what what is being done, in words for people: {@code checking drawings}
     * @param done how many steps are done
     * @param total how many there are; 0 if nobody knows
     */
    void report(String what, long done, long total);
}
