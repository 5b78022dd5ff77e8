// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/**
 * Runs the rules of a book over every target of a project, joins findings that are equal but for their vehicles, marks
 * those that a person accepted, and sorts what is left.
 *
 * <p>Each rule runs once for each target of its sort, one after the other: all of them ask the conditions of one
 * platform, which one lock guards. Stateless; safe for use by several threads. A rule whose conditions cannot be
 * followed to the end leaves a finding {@value #TOO_MANY} and does not stop the others. What geometry has to say about
 * the shape of a drawing or harness is reported with the problems of the text.
 */
public final class BookRuleEngine implements RuleEngine {

    /** The code of the finding that says that conditions could not be followed exactly. */
    public static final String TOO_MANY = "too-many-combinations";

    private final RuleBook book;

    /** Takes the rules to run. */
    public BookRuleEngine(RuleBook book) {
        this.book = book;
    }

    @Override
    public Report check(Project project, Settings settings, Cancel cancel, Progress progress) {
        Set<String> drawings = new HashSet<>();
        project.drawings().stream().map(WiringView::name).forEach(drawings::add);
        Shapes shapes = new Shapes(project, cancel);
        Joining joining = new Joining();
        List<Target> targets = Targets.of(project, shapes, cancel, (platform, why) -> joining.tooMany(
                "the connections of " + platform.name(), platform.name(), "platform " + platform.name(), why));
        long checks = 0;
        long done = 0;
        for (Target target : targets) {
            progress.report("checking " + target.words(), done++, targets.size());
            for (Rule<?> rule : book.rules()) {
                if (rule.target().isInstance(target)) {
                    cancel.check();
                    checks++;
                    run(rule, target, drawings::contains, cancel, joining);
                }
            }
        }
        progress.report("checked", targets.size(), targets.size());
        List<Finding> findings = new ArrayList<>(joining.findings());
        findings = new Acceptances(project, book, settings).apply(findings);
        project.problems().forEach(problem -> joining.problem(problem, Severity.ERROR));
        for (WiringView view : project.wirings().values()) {
            shape(view, shapes, joining);
        }
        findings.addAll(joining.problems());
        return new Report(Fingerprints.distinct(findings), new Report.Work(targets.size(), checks, joining.taken()));
    }

    private static void shape(WiringView view, Shapes shapes, Joining joining) {
        try {
            Shapes.Shape shape = shapes.of(view);
            shape.problems().forEach(problem -> joining.problem(problem, Severity.ERROR));
            shape.unplaced().forEach(problem -> joining.problem(problem, Severity.WARNING));
        } catch (TooManyCombinations e) {
            joining.tooMany("the shape of " + view.name(), view.name(), "drawing or harness " + view.name(),
                    e.getMessage());
        }
    }

    private static <T extends Target> void run(Rule<T> rule, Target target, Predicate<String> drawing, Cancel cancel,
            Joining joining) {
        Findings findings = new Findings(rule.info(), drawing, cancel);
        try {
            rule.check(rule.target().cast(target), findings);
            findings.drafts().forEach(joining::add);
        } catch (TooManyCombinations e) {
            joining.tooMany("rule " + rule.info().id(), target.element(), target.words(), e.getMessage());
        }
    }
}
