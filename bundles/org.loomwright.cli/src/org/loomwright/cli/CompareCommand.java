// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.CompareRevisions;
import org.loomwright.app.CompareRevisions.Compared;
import org.loomwright.app.OpenProject;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.print.CompareJson;
import org.loomwright.app.print.ComparePage;
import org.loomwright.app.print.CompareText;
import org.loomwright.app.revision.Sides;
import org.loomwright.quantity.Cancel;
import org.loomwright.rules.standard.StandardRules;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code compare}: what a revision changes, which vehicles feel it, and what follows. */
final class CompareCommand implements Command {

    private static final String ALL = "--all";
    private static final String SOLD = "--sold";
    private static final String NAME = "--name";

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
        spec.addPositional(Flags.one(0, true, "OLD", "A folder with .loom files, or one file, as it was; a git"
                + " revision REV of what NEW names, REV:PATH from the top of the repository, or REV..REV for both."));
        spec.addPositional(Flags.one(1, false, "NEW",
                "The same as it is now; behind REV..REV a path (default: here)."));
        spec.addOption(Flags.flag(ALL, "Print everything, not only the first lines of each part."));
        spec.addOption(Flags.flag(SOLD, "OLD has been sold: whatever it fitted and mated, NEW must too. With a"
                + " project alone: hold it against all revisions that its kits list as sold, as git has them."));
        spec.addOption(OptionSpec.builder(NAME).type(String.class).paramLabel("NAME").description(
                "What two files are called in the answer, where git put them aside under other names.").build());
        Flags.judgingOnPages(spec);
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.ofPages(arguments);
        List<String> given = given(arguments);
        if (arguments.hasMatchedOption(SOLD) && given.size() == 1 && !given.getFirst().contains("..")) {
            return HoldSold.run(given.getFirst(), arguments.hasMatchedOption(ALL), flags, language, door);
        }
        Compared compared;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            Sides sides = Sides.inGit(door.folder(), given);
            sides = arguments.hasMatchedOption(NAME) ? sides.named(arguments.matchedOptionValue(NAME, "")) : sides;
            OpenProject open = new OpenProject(language.reader(), Desk.threads());
            Opened old = open.open(sides.old(), Cancel.NEVER, progress);
            Opened now = open.open(sides.changed(), Cancel.NEVER, progress);
            compared = CompareRevisions.whole(StandardRules.engine(Desk.threads()), flags.settings(),
                    arguments.hasMatchedOption(SOLD)).compare(old, now, Cancel.NEVER, progress);
        }
        if (flags.json()) {
            door.out().print(CompareJson.of(compared, flags.failOn()));
        } else if (flags.format() == Format.HTML) {
            door.out().print(ComparePage.of(compared));
        } else {
            CompareText text = new CompareText(Desk.palette(door), door.width(), arguments.hasMatchedOption(ALL));
            door.out().print(flags.quiet() ? text.verdict(compared) : text.of(compared));
        }
        return compared.objects(flags.failOn()) ? Exit.FINDINGS : Exit.FINE;
    }

    private static List<String> given(ParseResult arguments) {
        String old = arguments.matchedPositionalValue(0, "");
        return arguments.hasMatchedPositional(1) ? List.of(old, arguments.matchedPositionalValue(1, ""))
                : List.of(old);
    }
}
