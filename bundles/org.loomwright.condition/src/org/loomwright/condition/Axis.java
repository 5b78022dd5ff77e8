// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.List;
import java.util.Objects;

/**
 * One thing that is chosen about a vehicle, and what it can be. A vehicle has exactly one member of each axis.
 *
 * <p>Members of the year axis are the parts of years in order of time: {@code 1965}, then, for a year with breaks,
 * {@code 1966 before late66} and {@code late66}, then {@code 1967}. Members of an option or upgrade {@code fan} are
 * {@code not fan} and {@code fan}, in this order.
 *
 * @param name {@code year}, or the name of the group, option or upgrade
 * @param kind what it is
 * @param members its members, at least one, in order
 */
public record Axis(String name, Kind kind, List<String> members) {
    /** What an axis is on the platform. */
    public enum Kind {
        /** The model year; the only axis with an order. */
        YEAR,
        /** A group: body, trim, steering side. */
        GROUP,
        /** Something the factory could fit. */
        OPTION,
        /** Something an owner can add. */
        UPGRADE
    }

    public Axis {
        Objects.requireNonNull(name);
        Objects.requireNonNull(kind);
        members = List.copyOf(members);
    }

    /** Returns whether this is an option or an upgrade: there or not. */
    public boolean isYesOrNo() {
        return kind == Kind.OPTION || kind == Kind.UPGRADE;
    }
}
