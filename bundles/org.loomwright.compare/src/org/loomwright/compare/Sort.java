// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare;

/** Sorts of elements that are matched with each other; an element is only ever matched with one of its own sort. */
public enum Sort {
    PLATFORM("platform"),
    GROUP("choice"),
    MEMBER("member"),
    OPTION("option"),
    BREAK("break"),
    CONSTRAINT("constraint"),
    ZONE("zone"),
    PLACE("place"),
    POSITION("position"),
    GROUND("ground"),
    STRAP("strap"),
    MODE("mode"),
    PART("part"),
    WIRING("harness"),
    RUN("branch"),
    BREAKOUT("breakout"),
    BARRIER("barrier"),
    CONNECTOR("connector"),
    STUD("stud"),
    DEVICE("device"),
    CIRCUIT("circuit"),
    SPLICE("splice"),
    WIRE("wire"),
    PLACED("placed part"),
    KIT("kit"),
    WAIVER("waiver"),
    PRACTICE("practice");

    private final String word;

    Sort(String word) {
        this.word = word;
    }

    /** The trade's word for one of them. */
    public String word() {
        return word;
    }

    /** Whether names of other elements are told apart by its name: those in a renamed one are renamed with it. */
    public boolean isOwner() {
        return this == WIRING || this == PLATFORM || this == KIT || this == CIRCUIT;
    }
}
