// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.List;
import org.loomwright.app.JudgeFit.Judged;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.sheet.Table;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;

/**
 * The whole job: every rule on every vehicle that can exist, the fit of every harness, and the bench's lists. Safe for
 * use by several threads.
 */
public final class ProveProject {

    private final RuleEngine rules;
    private final JudgeFit fit;

    public ProveProject(RuleEngine rules, JudgeFit fit) {
        this.rules = rules;
        this.fit = fit;
    }

    /**
     * What came of it.
     *
     * @param opened the project
     * @param report what the rules find, those about the fit too
     * @param fits   the fit of each harness
     * @param tables the bench's lists; none when something is objected to, so that nobody cuts from them
     */
    public record Proof(Opened opened, Report report, List<Judged> fits, List<Table> tables) {
    }

    /**
     * Proves a project.
     *
     * @param threshold findings of this weight or more are objections
     */
    public Proof prove(Opened opened, Settings settings, Severity threshold, Cancel cancel, Progress progress) {
        Report report = rules.check(opened.project(), settings, cancel, progress);
        List<Judged> fits = fit.judge(opened.project(), cancel, progress);
        List<Table> tables = report.objects(threshold) ? List.of() : MakeSheets.of(opened.project());
        return new Proof(opened, report, fits, tables);
    }
}
