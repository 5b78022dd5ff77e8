// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.words;

/**
 * What the grammar has for a word at one place of a line.
 *
 * @param sort    what sort of word
 * @param rule    the construct whose property it is: {@code Wire}, {@code Branch}, {@code End}
 * @param feature the property: {@code name}, {@code place}; empty for a word that only structures the line
 * @param outer   {@code Wire.from}: the property of the whole line that it is part of, with the construct of the line;
 *                empty where there is none
 * @param target  for a reference: the sort of thing that it names, such as {@code Place}; else empty
 * @param word    for a keyword or a mark: which; else empty
 */
public record Slot(Sort sort, String rule, String feature, String outer, String target, String word) {

    /** A word of which nothing is known, since its line cannot be read so far. */
    public static final Slot UNREAD = new Slot(Sort.UNREAD, "", "", "", "", "");

    /** Sorts of words. */
    public enum Sort {
        /** A word of the language. */
        KEYWORD,
        /** A name that is given to something. */
        NAME,
        /** The name of something that is declared elsewhere. */
        REFERENCE,
        /** A pin, a cavity or a state. */
        PIN,
        /** Text in quotes. */
        TEXT,
        /** A figure. */
        NUMBER,
        /** A unit. */
        UNIT,
        /** The code of a colour. */
        COLOUR,
        /** Another word whose meaning is not the grammar's. */
        WORD,
        /** A sign: a comma, a colon, a comparison. */
        MARK,
        /** What could not be read. */
        UNREAD
    }

    /** {@code Wire.name}: construct and property. */
    public String property() {
        return rule + "." + feature;
    }

    /** Whether it is that property of that construct. */
    public boolean is(String property) {
        return property.length() == rule.length() + 1 + feature.length() && property.startsWith(rule)
                && property.endsWith(feature);
    }
}
