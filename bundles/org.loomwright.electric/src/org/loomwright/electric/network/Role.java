// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

/** What a piece is there for. */
public enum Role {
    WIRE, CONTACT, GROUND_JOINT, SWITCH, RELAY_CONTACT, FUSE, BREAKER, LINK, STRAP, INSIDE, LOAD, COIL, BATTERY,
    MACHINE;

    /** Returns whether it only passes current on. */
    public boolean passes() {
        return this != LOAD && this != COIL && this != BATTERY && this != MACHINE;
    }

    /** Returns whether it opens when too much current flows. */
    public boolean protects() {
        return this == FUSE || this == BREAKER || this == LINK;
    }

    /** Returns whether two metal parts touch there, so that its resistance may grow with age. */
    public boolean touches() {
        return this == CONTACT || this == GROUND_JOINT || this == SWITCH || this == RELAY_CONTACT;
    }
}
