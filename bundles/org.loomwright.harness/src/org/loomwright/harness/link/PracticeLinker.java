// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Span;

/** Holds the practices of a project against each other: what is said twice of the same platform is a slip. */
final class PracticeLinker {

    private final Problems problems;
    private final Map<String, Span> said = new HashMap<>();

    PracticeLinker(Problems problems) {
        this.problems = problems;
    }

    /**
     * Reports what is wrong with names and what is said twice.
     *
     * @param platforms the platforms that there are
     * @param unread    platforms that there are but that could not be read to their end
     */
    void check(List<Practice> practices, Set<String> platforms, Set<String> unread) {
        for (Practice practice : practices) {
            practice.platform().filter(ref -> !platforms.contains(ref.text()) && !unread.contains(ref.text()))
                    .ifPresent(ref -> problems.unknown("platform", ref, platforms));
            String platform = practice.platform().map(Ref::text).orElse("");
            practice.settings().forEach(each -> once(platform, "limit " + each.limit().word(), each.span()));
            practice.treatments().forEach(each -> once(platform, "treatment of " + each.rule(), each.span()));
        }
    }

    private void once(String platform, String what, Span span) {
        Span first = said.putIfAbsent(platform + "\n" + what, span);
        if (first != null) {
            problems.add("stated-twice", span, "the " + what + " is stated a second time, first at " + first.at(),
                    "keep one of the two lines; the first one holds");
        }
    }
}
