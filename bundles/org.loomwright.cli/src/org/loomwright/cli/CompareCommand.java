// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.CompareRevisions;
import org.loomwright.app.CompareRevisions.Compared;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.print.CompareJson;
import org.loomwright.app.print.CompareText;
import org.loomwright.quantity.Cancel;
import org.loomwright.rules.standard.StandardRules;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code compare}: what a revision changes, which vehicles feel it, and what follows. */
final class CompareCommand implements Command {

    private static final String ALL = "--all";
    private static final String SOLD = "--sold";

    @Override
    public String name() {
        return "compare";
    }

    @Override
    public String summary() {
        return "Tell what a revision changes, which vehicles feel it, and what follows from it.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.one(0, true, "OLD", "A folder with .loom files, or one file, as it was."));
        spec.addPositional(Flags.one(1, true, "NEW", "The same as it is now."));
        spec.addOption(Flags.flag(ALL, "Print everything, not only the first lines of each part."));
        spec.addOption(Flags.flag(SOLD, "OLD has been sold: whatever it fitted and mated, NEW must too."));
        Flags.judging(spec);
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.of(arguments);
        Compared compared;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            Opened old = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress)
                    .getFirst();
            Opened now = Desk.open(language, door, List.of(arguments.matchedPositionalValue(1, "")), progress)
                    .getFirst();
            compared = CompareRevisions.whole(StandardRules.engine(Desk.threads()), flags.settings(),
                    arguments.hasMatchedOption(SOLD)).compare(old, now, Cancel.NEVER, progress);
        }
        if (flags.json()) {
            door.out().print(CompareJson.of(compared, flags.failOn()));
        } else {
            CompareText text = new CompareText(Desk.palette(door), door.width(), arguments.hasMatchedOption(ALL));
            door.out().print(flags.quiet() ? text.verdict(compared) : text.of(compared));
        }
        return compared.objects(flags.failOn()) ? Exit.FINDINGS : Exit.FINE;
    }
}
