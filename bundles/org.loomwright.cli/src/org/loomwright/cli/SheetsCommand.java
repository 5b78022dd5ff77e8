// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.app.BadCall;
import org.loomwright.app.Checked;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.PrintSheets;
import org.loomwright.app.PrintSheets.Asked;
import org.loomwright.app.PrintSheets.Printed;
import org.loomwright.app.print.CheckJson;
import org.loomwright.app.print.CheckText;
import org.loomwright.app.print.SheetsText;
import org.loomwright.app.write.SetFolder;
import org.loomwright.fit.ChainJudge;
import org.loomwright.quantity.Cancel;
import org.loomwright.rules.Report;
import org.loomwright.rules.standard.StandardRules;
import org.loomwright.sheets.PrintedSheets;
import org.loomwright.sheets.SheetChoice;
import org.loomwright.sheets.SheetFile;
import org.loomwright.sheets.SheetKind;
import org.loomwright.sheets.page.Paper;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code sheets}: the documents that bench and installer hold in their hands. */
final class SheetsCommand implements Command {

    private static final String FOR = "--for";
    private static final String ONLY = "--only";
    private static final String PAPER = "--paper";
    private static final String EVEN = "--even-with-errors";

    @Override
    public String name() {
        return "sheets";
    }

    @Override
    public String summary() {
        return "Print the documents of a kit or a harness: what the bench and the installer hold in their hands.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.one(0, true, "PROJECT", "A folder with .loom files."));
        spec.addPositional(Flags.one(1, false, "KIT", "A kit or a harness (default: the only kit, or harness)."));
        spec.addOption(option(FOR, "WORDS",
                "Only for these vehicles, as after 'when' in a source: 'year 1970 and halogen'."));
        spec.addOption(option(ONLY, "NAME", "Only this document: " + String.join(", ", SheetKind.words()) + "."));
        spec.addOption(Flags.to(true, "The folder to write to: a new or empty one, or that of an earlier set,"
                + " which is replaced whole."));
        spec.addOption(option(PAPER, "PAPER", "A4 (default), A3 or letter."));
        spec.addOption(Flags.flag(EVEN, "Print a kit with errors, with a stamp across every page."));
        Flags.format(spec);
        Flags.quiet(spec);
    }

    private static OptionSpec option(String name, String label, String description) {
        return OptionSpec.builder(name).type(String.class).paramLabel(label).description(description).build();
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.of(arguments);
        SheetChoice choice = new SheetChoice(kinds(arguments.matchedOptionValue(ONLY, "")),
                paper(arguments.matchedOptionValue(PAPER, "A4")), Optional.empty());
        SetFolder folder = SetFolder.at(door.folder(), arguments.matchedOptionValue("--to", ""));
        Asked asked = new Asked(arguments.matchedPositionalValue(1, ""), arguments.matchedOptionValue(FOR, ""),
                arguments.hasMatchedOption(EVEN));
        Opened opened;
        Printed printed;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            opened = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress).getFirst();
            printed = new PrintSheets(StandardRules.engine(Desk.threads()), StandardRules.book().infos(),
                    new ChainJudge(), new PrintedSheets()).print(opened, asked, language.reader(), choice,
                            flags.settings(), Cancel.NEVER, progress);
        }
        if (printed.files().isEmpty()) {
            return refuse(opened, printed, flags, door);
        }
        Map<String, byte[]> files = new LinkedHashMap<>();
        printed.files().forEach(file -> files.put(file.name(), file.bytes()));
        int gone = folder.replace(files);
        tell(printed, folder.shown(), gone, flags, door);
        return printed.errors().isEmpty() ? Exit.FINE : Exit.FINDINGS;
    }

    private static void tell(Printed printed, String folder, int gone, Flags flags, Door door) {
        List<SheetFile> files = printed.files();
        if (flags.json()) {
            door.out().print(SheetsText.json(folder, files));
        } else if (!flags.quiet()) {
            door.out().print(SheetsText.text(folder, files, gone));
            if (!printed.errors().isEmpty()) {
                door.out().print("every page has a stamp: " + printed.errors().size()
                        + (printed.errors().size() == 1 ? " error stands" : " errors stand") + " against it\n");
            }
        }
    }

    private static Set<SheetKind> kinds(String only) throws BadCall {
        if (only.isEmpty()) {
            return EnumSet.allOf(SheetKind.class);
        }
        return EnumSet.of(SheetKind.of(only).orElseThrow(() -> new BadCall("no document is called '" + only
                + "'; there is " + String.join(", ", SheetKind.words()))));
    }

    private static Paper paper(String word) throws BadCall {
        return Paper.of(word).orElseThrow(() -> new BadCall(PAPER + " is " + String.join(", ", Paper.words())
                + ", not '" + word + "'"));
    }

    /** A list made from a source with errors would be cut and crimped all the same. */
    private static int refuse(Opened opened, Printed printed, Flags flags, Door door) {
        Report errors = new Report(printed.errors(), printed.report().work());
        if (flags.json()) {
            door.out().print(CheckJson.of(List.of(Checked.of(opened, errors)), flags.failOn(), flags.shown()));
        } else {
            door.out().print(new CheckText(Desk.palette(door)).findings(opened, errors, flags.shown()));
            door.out().print("no sheet was written: " + printed.order().name() + " has errors; " + EVEN
                    + " prints it with a stamp on every page\n");
        }
        return Exit.FINDINGS;
    }
}
