// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.JudgeFit.Judged;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.print.CheckText;
import org.loomwright.app.print.FitPages;
import org.loomwright.quantity.Cancel;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Report;
import org.loomwright.rules.standard.StandardRules;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code fit}: does each harness fit every vehicle that it is for, and by how much? */
final class FitCommand implements Command {

    @Override
    public String name() {
        return "fit";
    }

    @Override
    public String summary() {
        return "Lay each harness into the vehicles of its drawings, and print the margins.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.one(0, true, "PROJECT", "A folder with .loom files."));
        Flags.checking(spec);
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.of(arguments);
        Opened opened;
        List<Judged> judged;
        Report report;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            opened = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress).getFirst();
            judged = Desk.fit().judge(opened.project(), Cancel.NEVER, progress);
            report = new BookRuleEngine(StandardRules.fitBook(), Desk.threads()).check(opened.project(),
                    flags.settings(), Cancel.NEVER, progress);
        }
        if (opened.project().harnesses().isEmpty() && report.findings().isEmpty()) {
            throw new BadCall("the project " + opened.place().name() + " has no harness to judge");
        }
        if (flags.json()) {
            door.out().print(FitPages.json(opened, judged, report, flags.failOn()));
        } else {
            door.out().print(new CheckText(Desk.palette(door)).findings(opened, report, flags.shown()));
            door.out().print(FitPages.text(opened.project(), judged, report, Desk.palette(door), door.width()));
        }
        return report.objects(flags.failOn()) ? Exit.FINDINGS : Exit.FINE;
    }
}
