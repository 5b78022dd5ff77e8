// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.List;
import java.util.Set;
import org.loomwright.app.BadCall;
import org.loomwright.app.Checked;
import org.loomwright.app.MakeSheets;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.print.CheckJson;
import org.loomwright.app.print.CheckText;
import org.loomwright.app.print.SheetsText;
import org.loomwright.app.sheet.Table;
import org.loomwright.app.write.SheetFolder;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Report;
import org.loomwright.rules.standard.StandardRules;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code sheets}: the bench's lists, without judging anything. */
final class SheetsCommand implements Command {

    @Override
    public String name() {
        return "sheets";
    }

    @Override
    public String summary() {
        return "Write wire lists, parts lists and kit lists as CSV; judge nothing but the text.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.one(0, true, "PROJECT", "A folder with .loom files."));
        spec.addPositional(Flags.one(1, false, "NAME", "A harness or a kit (default: all of them)."));
        spec.addOption(Flags.to(true, "The folder to write to; it is made if need be."));
        Flags.format(spec);
        Flags.quiet(spec);
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.of(arguments);
        SheetFolder folder = SheetFolder.at(door.folder(), arguments.matchedOptionValue("--to", ""));
        Opened opened;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            opened = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress).getFirst();
        }
        if (!opened.project().problems().isEmpty()) {
            return refuse(opened, flags, door);
        }
        String name = arguments.matchedPositionalValue(1, "");
        List<Table> tables = name.isEmpty() ? MakeSheets.of(opened.project()) : MakeSheets.of(opened.project(), name);
        if (tables.isEmpty()) {
            throw new BadCall("the project " + opened.place().name() + " has no harness and no kit");
        }
        folder.write(tables);
        if (flags.json()) {
            door.out().print(SheetsText.json(folder.shown(), tables));
        } else if (!flags.quiet()) {
            door.out().print(SheetsText.text(folder.shown(), tables));
        }
        return Exit.FINE;
    }

    /** A list made from half a source would be cut and crimped all the same. */
    private static int refuse(Opened opened, Flags flags, Door door) {
        Report report = new BookRuleEngine(StandardRules.book().part(Set.of())).check(opened.project(),
                flags.settings(), Cancel.NEVER, Progress.NONE);
        if (flags.json()) {
            door.out().print(CheckJson.of(List.of(Checked.of(opened, report)), flags.failOn(), flags.shown()));
        } else {
            door.out().print(new CheckText(Desk.palette(door)).findings(opened, report, flags.shown()));
            door.out().print("no list was written: the sources have errors\n");
        }
        return Exit.FINDINGS;
    }
}
