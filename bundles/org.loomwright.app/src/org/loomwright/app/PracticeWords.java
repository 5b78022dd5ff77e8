// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.harness.Practice;
import org.loomwright.harness.link.Project;

/** Says that a project judges by figures and weights of its own: nobody is to take its outcome for the usual one. */
public final class PracticeWords {

    private PracticeWords() {
    }

    /**
     * {@code judged by the practice orrinPractice: 2 rules treated otherwise, 1 limit set}; empty where no practice
     * says anything.
     */
    public static String of(Project project) {
        List<Practice> saying = project.practices().stream()
                .filter(each -> !each.treatments().isEmpty() || !each.settings().isEmpty()).toList();
        long rules = saying.stream().flatMap(each -> each.treatments().stream()).map(each -> each.rule().text())
                .distinct().count();
        long limits = saying.stream().flatMap(each -> each.settings().stream()).map(Practice.Setting::limit).distinct()
                .count();
        List<String> parts = new ArrayList<>();
        if (rules > 0) {
            parts.add(rules + (rules == 1 ? " rule" : " rules") + " treated otherwise");
        }
        if (limits > 0) {
            parts.add(limits + (limits == 1 ? " limit" : " limits") + " set");
        }
        return parts.isEmpty() ? "" : "judged by the practice " + String.join(", ",
                saying.stream().map(each -> each.name().text()).toList()) + ": " + String.join(", ", parts);
    }
}
