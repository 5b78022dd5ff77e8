// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * One member for each of some axes; with all axes, one vehicle.
 *
 * @param members axis name to member, in the order of {@link Choices#axes}; see {@link Axis} for the names of members
 */
public record Assignment(Map<String, String> members) {
    public Assignment {
        members = Collections.unmodifiableMap(new LinkedHashMap<>(members));
    }

    /** Returns the members for people: {@code 1964, saloon, lhd, not heater, fan}. */
    public String words() {
        return members.values().stream().collect(Collectors.joining(", "));
    }
}
