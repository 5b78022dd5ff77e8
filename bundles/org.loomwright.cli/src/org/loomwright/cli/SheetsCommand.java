// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import org.loomwright.app.BadCall;
import org.loomwright.sheets.SheetKind;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code sheets}: the documents that bench and installer hold in their hands. */
final class SheetsCommand implements Command {

    static final String FOR = "--for";
    static final String ONLY = "--only";
    static final String PAPER = "--paper";
    static final String BOARD = "--board";
    static final String EVEN = "--even-with-errors";

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
        spec.addOption(option(BOARD, "SIZE", "The formboard that there is, in mm (default: 2440x1220)."));
        spec.addOption(Flags.flag(EVEN, "Print a kit with errors, with a stamp across every page."));
        Flags.format(spec);
        Flags.quiet(spec);
    }

    private static OptionSpec option(String name, String label, String description) {
        return OptionSpec.builder(name).type(String.class).paramLabel(label).description(description).build();
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        return SheetsPrinting.run(arguments, language, door);
    }
}
