// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import org.loomwright.harness.Span;

/**
 * Something that can be written.
 *
 * @param kind   what sort of thing it is, for an icon
 * @param text   what is inserted, and shown
 * @param detail a few words about it, shown beside it; may be empty
 * @param more   more about it, one sentence or several lines; may be empty
 * @param where  what is replaced
 * @param rank   lower ones are offered first; equal ones in natural order
 */
public record Proposal(Kind kind, String text, String detail, String more, Span where, int rank) {

    /** Sorts of proposals. */
    public enum Kind {
        KEYWORD, CONNECTOR, SPLICE, STUD, DEVICE, CAVITY, PART, PLACE, POINT, CHOICE, UNIT, COLOUR, DRAWING, PLATFORM,
        RULE, OTHER
    }
}
