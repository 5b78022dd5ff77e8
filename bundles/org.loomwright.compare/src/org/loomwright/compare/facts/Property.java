// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import org.loomwright.compare.Aspect;

/** What can be stated of an element. The weight says how much it tells about which element it is. */
public enum Property {
    /** The element is there; its condition is the element's. */
    EXISTS("for", Aspect.CONDITION, 0.5),
    SUPPLY("supply", Aspect.ELECTRICAL, 1),
    YEARS("years", Aspect.CONDITION, 1),
    MEMBER("member of", Aspect.CONDITION, 1),
    CHOICE_KIND("kind of choice", Aspect.CONDITION, 1),
    BREAK_YEAR("year", Aspect.CONDITION, 2),
    BREAK_ORDER("order of breaks", Aspect.CONDITION, 0),
    CONSTRAINT("says", Aspect.CONDITION, 3),
    AMBIENT("ambient temperature", Aspect.ELECTRICAL, 1),
    WET("wet or dry", Aspect.ELECTRICAL, 1),
    ZONE("zone", Aspect.ELECTRICAL, 1),
    NO_RETURN("ground node", Aspect.ELECTRICAL, 1),
    STRAP_END("joins", Aspect.ELECTRICAL, 2),
    RESISTANCE("resistance", Aspect.ELECTRICAL, 1),
    PARENT("based on", Aspect.ELECTRICAL, 1),
    MODE_SETTING("state of", Aspect.ELECTRICAL, 1),
    KIND("kind", Aspect.PART, 2),
    BASE("like", Aspect.PART, 2),
    RATED("", Aspect.ELECTRICAL, 1),
    FIGURE("", Aspect.PART, 1),
    WORD("", Aspect.PART, 1),
    MATING_WORD("", Aspect.INTERFACE, 1),
    SIZE_MADE("made in", Aspect.PART, 1),
    PIN("pin", Aspect.INTERFACE, 0.5),
    JOIN("joins", Aspect.ELECTRICAL, 1),
    STATE("state", Aspect.ELECTRICAL, 1),
    REST("state at rest", Aspect.ELECTRICAL, 1),
    PLATFORM("platform", Aspect.CONDITION, 1),
    POSITION("fills", Aspect.INTERFACE, 1),
    COVERS("covers", Aspect.CONDITION, 1),
    DATUM("datum", Aspect.GEOMETRY, 1),
    TOLERANCE("tolerance", Aspect.GEOMETRY, 0.5),
    SETTING("", Aspect.GEOMETRY, 0.5),
    CAP("capped", Aspect.GEOMETRY, 1),
    OBJECTIVES("minimises", Aspect.TEXT, 0),
    LEAVES("leaves at", Aspect.GEOMETRY, 2),
    SERVES("serves", Aspect.GEOMETRY, 3),
    ON("on", Aspect.GEOMETRY, 1),
    AFTER("counted from", Aspect.GEOMETRY, 1),
    ORDER("order of breakouts", Aspect.GEOMETRY, 0),
    STATION("station", Aspect.GEOMETRY, 2),
    SEQUENCE("place in the row", Aspect.GEOMETRY, 1),
    SLACK("slack before", Aspect.GEOMETRY, 0.5),
    BEND("bend", Aspect.GEOMETRY, 0.5),
    LENGTH("length", Aspect.GEOMETRY, 1),
    PLACE("place", Aspect.INTERFACE, 3),
    BRANCH("branch", Aspect.INTERFACE, 3),
    GROUND("ground", Aspect.ELECTRICAL, 1),
    RETURNS("intended return", Aspect.ELECTRICAL, 0.5),
    HOUSING("housing", Aspect.INTERFACE, 2),
    MATES("mates", Aspect.INTERFACE, 3),
    MAP("cavity map", Aspect.INTERFACE, 0.5),
    TERMINAL("terminal", Aspect.PART, 0.5),
    SEAL("seal", Aspect.PART, 0.5),
    PLUG("plug", Aspect.PART, 0.5),
    PART("part", Aspect.PART, 2),
    CIRCUIT("circuit", Aspect.ELECTRICAL, 2),
    SIZE("size", Aspect.ELECTRICAL, 1),
    FROM("from", Aspect.ELECTRICAL, 3),
    TO("to", Aspect.ELECTRICAL, 3),
    CABLE("cable", Aspect.PART, 0.5),
    COLOUR("colour", Aspect.ELECTRICAL, 1),
    ORIGIN("stands for", Aspect.TEXT, 1),
    METHOD("method", Aspect.PART, 0.5),
    AT("at", Aspect.GEOMETRY, 2),
    UNTIL_AT("up to", Aspect.GEOMETRY, 1),
    REVISION("revision", Aspect.TEXT, 0.5),
    NEEDS("needs", Aspect.INTERFACE, 1),
    CONTAINS("contains", Aspect.PART, 1),
    SOLD("sold revision", Aspect.TEXT, 0.5),
    ACCEPTS("accepts", Aspect.CONDITION, 3),
    REASON("reason", Aspect.TEXT, 1),
    UNTIL("until", Aspect.CONDITION, 0.5),
    TREATS("treats", Aspect.CONDITION, 1),
    LIMIT("limit", Aspect.CONDITION, 1),
    AS_FACTORY("as factory because", Aspect.TEXT, 0.5),
    SHEET("sheet", Aspect.TEXT, 0.5),
    LEGEND("print legend", Aspect.TEXT, 0.5),
    TITLE("title", Aspect.TEXT, 1);

    private final String words;
    private final Aspect aspect;
    private final double weight;

    Property(String words, Aspect aspect, double weight) {
        this.words = words;
        this.aspect = aspect;
        this.weight = weight;
    }

    /** The trade's words for it; empty where the subject says it all. */
    public String words() {
        return words;
    }

    /** What a change of it is about. */
    public Aspect aspect() {
        return aspect;
    }

    /** How much it tells about which element it is; 0 for nothing. */
    public double weight() {
        return weight;
    }

    /** True for what follows from other facts and is only told, never applied. */
    public boolean isDerived() {
        return this == ORDER;
    }
}
