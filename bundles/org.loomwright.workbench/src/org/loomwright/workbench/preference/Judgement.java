// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.preference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Practice.Weight;
import org.loomwright.harness.link.Project;
import org.loomwright.ide.act.Judging;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/** What a practice says of each rule, and what it shall say. Used on one thread. */
final class Judgement {

    /** The name of a practice that is made for a project without one, and of its file. */
    static final String NEW = "practice";

    private final List<Row> said = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();
    private List<Practice> practices = List.of();
    private int chosen;
    private boolean read;
    private boolean awaited;

    /**
     * A rule and what is wished of it.
     *
     * @param weight as what its findings are treated; empty for what the rule says
     */
    record Row(RuleInfo rule, Optional<Weight> weight, String reason) {

        /** What can be chosen: whatever it is not by itself; an error is never silenced. */
        List<Weight> choices() {
            return Arrays.stream(Weight.values()).filter(each -> each != Weight.SILENT
                    || rule.severity() != Severity.ERROR).toList();
        }

        Row with(Optional<Weight> other, String why) {
            return new Row(rule, other, why);
        }
    }

    boolean isRead() {
        return read;
    }

    void read(Project project) {
        practices = project.practices();
        read = true;
        choose(0);
    }

    /** What can be written into, in words; a new practice where there is none. */
    List<String> practices() {
        return practices.isEmpty() ? List.of("a new one, in " + NEW + ".loom") : practices.stream().map(each ->
                each.name().text() + each.platform().map(platform -> " of " + platform.text()).orElse("")
                + ", in " + each.span().file()).toList();
    }

    /** The practice that is written into; empty for a new one. */
    Optional<Practice> practice() {
        return practices.isEmpty() ? Optional.empty() : Optional.of(practices.get(chosen));
    }

    /** Takes what one of the practices says; what was wished of another is forgotten. */
    void choose(int index) {
        chosen = Math.max(0, index);
        said.clear();
        for (RuleInfo rule : StandardRules.book().infos()) {
            Optional<Practice.Treatment> treatment = practice().stream().flatMap(each -> each.treatments().stream())
                    .filter(each -> each.rule().text().equals(rule.id())).findFirst();
            said.add(new Row(rule, treatment.map(Practice.Treatment::weight), treatment.map(
                    Practice.Treatment::reason).orElse("")));
        }
        rows.clear();
        rows.addAll(said);
    }

    List<Row> rows() {
        return rows;
    }

    void set(int index, Row row) {
        rows.set(index, row);
    }

    /** Every rule weighs what it says. */
    void asRuled() {
        rows.replaceAll(row -> row.with(Optional.empty(), ""));
    }

    /** Why it cannot be written: a reason is never left out. */
    Optional<String> wrong() {
        return rows.stream().filter(row -> row.weight().isPresent() && row.reason().isBlank()).findFirst()
                .map(row -> "Say why " + row.rule().id() + " weighs otherwise here.");
    }

    /** What was wished is written. A new practice is known by its name only when the project was read again. */
    void written() {
        said.clear();
        said.addAll(rows);
        read = !practices.isEmpty();
        awaited = practices.isEmpty();
    }

    /** Whether what is known of a project can be taken: not before a practice that was made is in it. */
    boolean takes(Project project) {
        return !read && !(awaited && project.practices().isEmpty());
    }

    /** What is wished otherwise than it is said. */
    List<Judging.Wish> wishes() {
        List<Judging.Wish> wishes = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            if (!row.weight().equals(said.get(i).weight()) || row.weight().isPresent()
                    && !row.reason().equals(said.get(i).reason())) {
                wishes.add(new Judging.Wish(row.rule().id(), row.weight(), row.reason()));
            }
        }
        return wishes;
    }
}
