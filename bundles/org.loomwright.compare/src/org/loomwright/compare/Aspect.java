// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare;

import java.util.Locale;

/** What a change is about; the order is that in which a reviewer wants to read. */
public enum Aspect {
    /** Circuits, wire sizes, ends, ratings: current may flow otherwise. */
    ELECTRICAL(Attention.MUST),
    /** What vehicles, neighbours and add-ons meet: places, mates, cavity maps, housings. */
    INTERFACE(Attention.MUST),
    /** Which vehicles something is for, and which vehicles can exist. */
    CONDITION(Attention.MUST),
    /** Lengths, stations, where branches leave. The fit says what follows. */
    GEOMETRY(Attention.SHOULD),
    /** Parts and what is in the box. */
    PART(Attention.SHOULD),
    /** Names, titles and spelling: no vehicle feels it. */
    TEXT(Attention.NEED_NOT);

    private final Attention attention;

    Aspect(Attention attention) {
        this.attention = attention;
    }

    /** How closely a reviewer must look. */
    public enum Attention {
        /** A reviewer must look at it. */
        MUST("must be reviewed"),
        /** A reviewer should look at it. */
        SHOULD("should be reviewed"),
        /** Nothing that a vehicle or the bench feels. */
        NEED_NOT("reads otherwise");

        private final String words;

        Attention(String words) {
            this.words = words;
        }

        /** The words for people. */
        public String words() {
            return words;
        }
    }

    /** How closely a reviewer must look at changes of this aspect. */
    public Attention attention() {
        return attention;
    }

    /** The word for people: {@code electrical}. */
    public String words() {
        return name().toLowerCase(Locale.ROOT);
    }
}
