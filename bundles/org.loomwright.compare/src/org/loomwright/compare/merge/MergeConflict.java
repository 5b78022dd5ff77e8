// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

/**
 * A fact that both sides changed, each in its own way.
 *
 * @param element the element: {@code wire 12a of circuit 12 of harness front}
 * @param fact    the fact: {@code size}
 * @param base    its value before; {@code nothing} where it had none
 * @param ours    its value on our side
 * @param theirs  its value on their side
 * @param line    the line of the merged text on which the conflict begins, from 1
 */
public record MergeConflict(String element, String fact, String base, String ours, String theirs, int line) {

    /** The conflict in words: {@code wire 12a of circuit 12: size 16 ga in ours, 14 ga in theirs; was 18 ga}. */
    public String words() {
        return element + ": " + fact + " " + ours + " in ours, " + theirs + " in theirs; was " + base;
    }
}
