// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

/**
 * Something that drawings do not agree about, and what the draft makes of it.
 *
 * @param kind    what it is about
 * @param element the element of the draft
 * @param words   what was chosen and from what, for people
 */
public record Choice(Kind kind, String element, String words) {

    /** What can differ between drawings. */
    public enum Kind {
        /** A connector, and the vehicles that each of its forms is for. */
        SOCKET("connector"),
        /** A connector that mates each year's own other half. */
        MATE("mates"),
        /** A conductor size. */
        GAUGE("size"),
        /** A circuit, branch or wire that only some vehicles use. */
        PARTIAL("only some"),
        /** A function that is at another place in some vehicles. */
        MOVED("moved"),
        /** A number or colour. */
        NAME("number or colour"),
        /** The order of breakouts. */
        ORDER("order"),
        /** Something else that was left to the engineer. */
        LEFT("left to you");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** The words for people. */
        public String words() {
            return words;
        }
    }
}
