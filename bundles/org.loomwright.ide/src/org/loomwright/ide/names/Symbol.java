// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.names;

/**
 * Something that has a name: a value that can serve as a key.
 *
 * @param kind  what it is
 * @param owner in what it is unique: a platform, drawing, harness or part; {@code front/12} for the wires of a circuit;
 *              empty for what the whole project knows
 * @param name  its name
 */
public record Symbol(Kind kind, String owner, String name) {

    /** Kinds of things that have names. */
    public enum Kind {
        PLATFORM("platform"), CATALOGUE("catalogue"), DRAWING("drawing"), HARNESS("harness"), KIT("kit"),
        PRACTICE("practice"), WAIVER("waiver"), PART("part"), PIN("pin"), STATE("state"), ZONE("zone"),
        PLACE("place"), POSITION("position"), GROUND("ground"), STRAP("strap"), DEVICE("device"), MODE("mode"),
        AXIS("group"), CHOICE("choice"), CONSTRAINT("constraint"), RUN("trunk or branch"), BREAKOUT("breakout"),
        BARRIER("barrier"), BEND("bend"), CONNECTOR("connector"), STUD("stud"), SPLICE("splice"),
        CIRCUIT("circuit"), WIRE("wire"), PLACED("fitted part"), RULE("rule"), LIMIT("limit");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** The word for people. */
        public String words() {
            return words;
        }
    }

    /** {@code connector H1 of front}. */
    public String words() {
        return kind.words() + " " + name + (owner.isEmpty() ? "" : " of " + owner.replace("/", ", circuit "));
    }
}
