// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.print.CheckJson;
import org.loomwright.app.print.CheckText;
import org.loomwright.quantity.Cancel;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.standard.StandardRules;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code check}: every rule on every vehicle that can exist. */
final class CheckCommand implements Command {

    @Override
    public String name() {
        return "check";
    }

    @Override
    public String summary() {
        return "Check drawings and harnesses for every vehicle that can exist.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.paths("PATH", "Folders, each a project of its own, or .loom files of one project."));
        Flags.checking(spec);
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.of(arguments);
        List<CheckJson.Checked> checked = new ArrayList<>();
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            RuleEngine engine = StandardRules.engine(Desk.threads());
            for (Opened opened : Desk.open(language, door, arguments.matchedPositionalValue(0, List.of()), progress)) {
                checked.add(new CheckJson.Checked(opened,
                        engine.check(opened.project(), flags.settings(), Cancel.NEVER, progress)));
            }
        }
        if (flags.json()) {
            door.out().print(CheckJson.of(checked, flags.failOn(), flags.shown()));
        } else {
            CheckText text = new CheckText(Desk.palette(door));
            for (CheckJson.Checked each : checked) {
                door.out().print(text.findings(each.opened(), each.report(), flags.shown()));
            }
            if (!flags.quiet()) {
                checked.forEach(each -> door.out().print(text.summary(each.opened(), each.report())));
            }
        }
        boolean objects = checked.stream().anyMatch(each -> each.report().objects(flags.failOn()));
        return objects ? Exit.FINDINGS : Exit.FINE;
    }
}
