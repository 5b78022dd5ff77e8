// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.List;
import org.loomwright.app.BadCall;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** The list of commands, and what is common to describing them. */
final class Commands {

    private static final String[] EXIT_CODES = {
        "", "Exit code: 0 nothing to object to, 1 findings at or above the threshold,",
        "           2 nothing could be read or the call is wrong, 3 a fault of ours."};

    private static final int WIDTH = 100;

    private Commands() {
    }

    static List<Command> all() {
        return List.of(new ProveCommand(), new CheckCommand(), new ElectricCommand(), new FitCommand(),
                new PlanCommand(), new CompareCommand(), new FactsCommand(), new MergeCommand(), new MatrixCommand(),
                new SheetsCommand(), new StockCommand(), new FormatCommand(), new ServeCommand());
    }

    /** A parser for one description that takes arguments as they come. */
    static CommandLine line(CommandSpec spec) {
        return new CommandLine(spec).setExpandAtFiles(false).setInterpolateVariables(false);
    }

    /** The description of one command. */
    static CommandSpec spec(Command command) {
        CommandSpec spec = CommandSpec.create();
        spec.addOption(help());
        command.describe(spec);
        spec.usageMessage().description(command.summary()).footer(EXIT_CODES).width(WIDTH).sortOptions(false);
        return spec;
    }

    /** Handles a call that begins with no command. */
    static int program(String[] args, List<Command> commands, Door door) throws BadCall {
        CommandSpec spec = CommandSpec.create().name("loomwright").addOption(help()).addOption(
                OptionSpec.builder("--version").versionHelp(true).description("Print the version.").build());
        spec.usageMessage().description("Wiring kits for older vehicles, checked from text.").footer(EXIT_CODES)
                .width(WIDTH);
        for (Command command : commands) {
            spec.addSubcommand(command.name(), line(spec(command)));
        }
        CommandLine line = line(spec);
        ParseResult parsed;
        try {
            parsed = line.parseArgs(args.length == 1 && args[0].equals("help") ? new String[] {"--help"} : args);
        } catch (ParameterException e) {
            throw new BadCall(complaint(e));
        }
        if (parsed.isVersionHelpRequested()) {
            door.out().print("loomwright " + Version.text() + "\n");
            return Exit.FINE;
        }
        if (parsed.isUsageHelpRequested()) {
            line.usage(door.out(), CommandLine.Help.Ansi.OFF);
            return Exit.FINE;
        }
        throw new BadCall("no command; see 'loomwright --help'");
    }

    /** What is wrong with the arguments, in one line without a full stop. */
    static String complaint(ParameterException e) {
        if (e instanceof UnmatchedArgumentException unmatched) {
            String wrong = unmatched.getUnmatched().getFirst();
            List<String> near = nearest(wrong, unmatched.getSuggestions());
            String what = unmatched.isUnknownOption() ? "unknown option" : e.getCommandLine().getSubcommands().isEmpty()
                    ? "one argument too many" : "unknown command";
            return what + " '" + wrong + "'"
                    + (near.isEmpty() ? "" : "; did you mean " + String.join(" or ", near) + "?");
        }
        String message = String.valueOf(e.getMessage()).lines().findFirst().orElse("wrong call");
        String end = message.endsWith(".") ? message.substring(0, message.length() - 1) : message;
        return Character.toLowerCase(end.charAt(0)) + end.substring(1);
    }

    /** Those of the candidates that differ from a word in the fewest letters, wherever these stand. */
    private static List<String> nearest(String wrong, List<String> candidates) {
        int least = candidates.stream().mapToInt(each -> lettersApart(wrong, each)).min().orElse(0);
        return candidates.stream().filter(each -> lettersApart(wrong, each) == least).toList();
    }

    private static int lettersApart(String one, String other) {
        StringBuilder left = new StringBuilder(other);
        int missing = 0;
        for (char letter : one.toCharArray()) {
            int at = left.indexOf(String.valueOf(letter));
            if (at < 0) {
                missing++;
            } else {
                left.deleteCharAt(at);
            }
        }
        return missing + left.length();
    }

    private static OptionSpec help() {
        return OptionSpec.builder("-h", "--help").usageHelp(true).description("Print this help.").build();
    }
}
