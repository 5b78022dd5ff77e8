// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
import picocli.CommandLine.ParseResult;

/** What {@code sheets} does; apart from its command, so that no other command loads what prints. */
final class SheetsPrinting {

    private SheetsPrinting() {
    }

    static int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.of(arguments);
        SheetChoice choice = new SheetChoice(kinds(arguments.matchedOptionValue(SheetsCommand.ONLY, "")),
                paper(arguments.matchedOptionValue(SheetsCommand.PAPER, "A4")), Optional.empty(),
                board(arguments.matchedOptionValue(SheetsCommand.BOARD, "")));
        SetFolder folder = SetFolder.at(door.folder(), arguments.matchedOptionValue("--to", ""));
        Asked asked = new Asked(arguments.matchedPositionalValue(1, ""),
                arguments.matchedOptionValue(SheetsCommand.FOR, ""), arguments.hasMatchedOption(SheetsCommand.EVEN));
        Opened opened;
        Printed printed;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            opened = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress).getFirst();
            printed = new PrintSheets(StandardRules.engine(Desk.threads()), StandardRules.book().infos(),
                    new ChainJudge(), new PrintedSheets(Desk.threads())).print(opened, asked, language.reader(), choice,
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

    private static SheetChoice.Size board(String words) throws BadCall {
        if (words.isEmpty()) {
            return SheetChoice.USUAL_BOARD;
        }
        Matcher size = Pattern.compile("([1-9][0-9]{2,4})x([1-9][0-9]{2,4})").matcher(words);
        if (!size.matches()) {
            throw new BadCall(SheetsCommand.BOARD + " is width x height in mm, such as 2440x1220, not '" + words + "'");
        }
        return new SheetChoice.Size(Double.parseDouble(size.group(1)), Double.parseDouble(size.group(2)));
    }

    private static Paper paper(String word) throws BadCall {
        return Paper.of(word).orElseThrow(() -> new BadCall(SheetsCommand.PAPER + " is "
                + String.join(", ", Paper.words()) + ", not '" + word + "'"));
    }

    /** A list made from a source with errors would be cut and crimped all the same. */
    private static int refuse(Opened opened, Printed printed, Flags flags, Door door) {
        Report errors = new Report(printed.errors(), printed.report().work());
        if (flags.json()) {
            door.out().print(CheckJson.of(List.of(Checked.of(opened, errors)), flags.failOn(), flags.shown()));
        } else {
            door.out().print(new CheckText(Desk.palette(door)).findings(opened, errors, flags.shown()));
            door.out().print("no sheet was written: " + printed.order().name() + " has errors; " + SheetsCommand.EVEN
                    + " prints it with a stamp on every page\n");
        }
        return Exit.FINDINGS;
    }
}
