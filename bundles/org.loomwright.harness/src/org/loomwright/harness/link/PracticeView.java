// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Ref;

/**
 * What the practices of a project say for one platform: those for the platform itself before those for all; of two
 * statements of the same rank the first one holds.
 *
 * @param limits     the limits
 * @param treatments by id of the rule
 */
public record PracticeView(Limits limits, Map<String, Practice.Treatment> treatments) {

    /** No practice says anything. */
    public static final PracticeView NONE = new PracticeView(Limits.usual(), Map.of());

    /** Joins what holds for a platform; for no platform at all, by the empty name. */
    public static PracticeView of(List<Practice> practices, String platform) {
        List<Practice> own = practices.stream()
                .filter(each -> each.platform().map(Ref::text).filter(platform::equals).isPresent()).toList();
        List<Practice> all = practices.stream().filter(each -> each.platform().isEmpty()).toList();
        Map<Limit, Limits.Own> set = new EnumMap<>(Limit.class);
        Map<String, Practice.Treatment> treatments = new LinkedHashMap<>();
        for (List<Practice> rank : List.of(own, all)) {
            for (Practice practice : rank) {
                practice.settings().forEach(each -> set.putIfAbsent(each.limit(),
                        new Limits.Own(practice.name().text(), each)));
                practice.treatments().forEach(each -> treatments.putIfAbsent(each.rule().text(), each));
            }
        }
        return set.isEmpty() && treatments.isEmpty() ? NONE
                : new PracticeView(new Limits(set), Collections.unmodifiableMap(treatments));
    }

    /** How findings of a rule are treated; empty where nothing is said of it. */
    public Optional<Practice.Treatment> treatment(String rule) {
        return Optional.ofNullable(treatments.get(rule));
    }
}
