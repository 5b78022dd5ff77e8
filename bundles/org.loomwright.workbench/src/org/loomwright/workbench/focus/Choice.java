// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.focus;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Assignment;
import org.loomwright.condition.Axis;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Vehicles;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;

/**
 * What was chosen about the vehicles of one platform: a member of some of its choices, by their names. Kept in
 * words, so that it outlives the check that its names come from; what a platform no longer has is without effect.
 *
 * @param platform name of the platform; empty for no choice
 * @param members  for each choice that is settled its member
 */
public record Choice(String platform, Map<String, String> members) {

    /** Every vehicle of every platform. */
    public static final Choice ALL = new Choice("", Map.of());

    public Choice {
        members = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(members));
    }

    /** Returns the same with one more thing settled, or settled otherwise; empty to leave it open. */
    public Choice with(String axis, Optional<String> member) {
        Map<String, String> changed = new LinkedHashMap<>(members);
        changed.remove(axis);
        member.ifPresent(each -> changed.put(axis, each));
        return new Choice(platform, changed);
    }

    /** Returns whether nothing is settled. */
    public boolean isAll() {
        return members.isEmpty();
    }

    /** Returns the chosen vehicles of a platform; all of them for another platform than that of the choice. */
    public Condition of(Vehicles vehicles, String of) {
        if (!of.equals(platform)) {
            return vehicles.all();
        }
        Map<String, String> known = new LinkedHashMap<>();
        for (Axis axis : vehicles.choices().axes()) {
            String member = members.get(axis.name());
            if (member != null && axis.members().contains(member)) {
                known.put(axis.name(), member);
            }
        }
        return vehicles.where(new Assignment(known));
    }

    /** Returns whether a condition holds for one of the chosen vehicles; true when it is about another platform. */
    public boolean touches(Condition condition, Project project) {
        if (isAll()) {
            return true;
        }
        PlatformView view = project.platforms().get(platform);
        return view == null || view.vehicles() != condition.vehicles()
                || !condition.excludes(of(view.vehicles(), platform));
    }

    /** Returns the words for people: {@code 1964, saloon, not fan}; {@code every vehicle}. */
    public String words() {
        return members.isEmpty() ? "every vehicle" : platform + ": " + String.join(", ", members.values());
    }
}
