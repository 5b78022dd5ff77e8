// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

/** What came of one place in one vehicle geometry, from best to worst. */
public enum FitStatus {
    /** The branch reaches, and nothing is too long. */
    FITS("fits"),
    /** The vehicle does not use the branch; nothing stated forbids to park it. */
    CAPPED("capped"),
    /** Another covered drawing of the same vehicles has the place. */
    ELSEWHERE("on another drawing"),
    /** A length is missing; nothing can be concluded. */
    NOT_PROVED("not proved"),
    /** More has to be dressed back than is allowed. */
    TOO_LONG("too long"),
    /** The branch runs further along the trunk than is allowed. */
    DOUBLES_BACK("doubles back"),
    /** The capped branch is longer than its parking place takes. */
    TOO_LONG_TO_PARK("too long to park"),
    /** The drawing has a branch there and the harness has none. */
    NOT_SERVED("place not served"),
    /** The branch does not reach. */
    TOO_SHORT("too short");

    private final String words;

    FitStatus(String words) {
        this.words = words;
    }

    /** For people. */
    public String words() {
        return words;
    }

    /** True when the harness does not fit there. */
    public boolean isFailure() {
        return compareTo(NOT_PROVED) > 0;
    }
}
