// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.loomwright.app.BadCall;
import org.loomwright.condition.TooManyCombinations;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/**
 * The command line. Ends with 0 when there is nothing to object to, 1 for findings at or above the threshold, 2 when
 * nothing could be read or the call is wrong, 3 for a fault of ours.
 */
public final class Main {

    private static final String PROGRAM = "loomwright";
    private static final String LOG_CONFIGURATION = "log4j.configuration";

    private Main() {
    }

    /** Runs one call and ends the Java virtual machine with its code. */
    public static void main(String[] args) {
        silenceLibraries();
        boolean outTerminal = Terminal.at(1);
        boolean errTerminal = Terminal.at(2);
        ResultStream results = new ResultStream(new FileOutputStream(FileDescriptor.out));
        PrintStream out = new PrintStream(results, false, Terminal.encoding(outTerminal, "stdout.encoding"));
        PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), true,
                Terminal.encoding(errTerminal, "stderr.encoding"));
        Door door = new Door(out, err, Path.of(""), System.getenv(), outTerminal, errTerminal);
        int code = run(args, door);
        out.flush();
        if (results.failure().isPresent()) {
            err.println(PROGRAM + ": cannot write to standard output: " + results.failure().get());
            code = Math.max(code, Exit.BAD_CALL);
        }
        System.exit(code);
    }

    /** Libraries that log would read a configuration of their own from the class path, and print. */
    private static void silenceLibraries() {
        if (System.getProperty(LOG_CONFIGURATION) == null) {
            System.setProperty(LOG_CONFIGURATION, "org/loomwright/cli/silent-log4j.properties");
        }
    }

    /**
     * Runs one call without a terminal.
     *
     * @param args   the arguments
     * @param out    where results go
     * @param err    where complaints go
     * @param folder the folder that relative paths start from
     * @return the exit code
     */
    public static int run(String[] args, PrintStream out, PrintStream err, Path folder) {
        return run(args, new Door(out, err, folder, Map.of(), false, false));
    }

    /** Runs one call. Never throws. */
    static int run(String[] args, Door door) {
        try {
            return dispatch(args, door);
        } catch (BadCall | ParameterException | TooManyCombinations e) {
            return complain(e.getMessage(), door);
        } catch (Exception | StackOverflowError | OutOfMemoryError | LinkageError | AssertionError fault) {
            Fault.report(fault, args, door);
            return Exit.FAULT;
        } finally {
            door.out().flush();
        }
    }

    private static int dispatch(String[] args, Door door) throws BadCall {
        List<Command> commands = Commands.all();
        if (args.length > 0) {
            for (Command command : commands) {
                if (command.name().equals(args[0])) {
                    return call(command, Arrays.copyOfRange(args, 1, args.length), door);
                }
            }
        }
        return Commands.program(args, commands, door);
    }

    private static int call(Command command, String[] args, Door door) throws BadCall {
        Language language = command.reads(List.of(args)) ? Language.settingUp() : Language.whenAsked();
        CommandSpec spec = Commands.spec(command).name(PROGRAM + " " + command.name());
        CommandLine line = Commands.line(spec);
        ParseResult parsed;
        try {
            parsed = line.parseArgs(args);
        } catch (ParameterException e) {
            throw new BadCall(Commands.complaint(e) + "; see '" + PROGRAM + " " + command.name() + " --help'");
        }
        if (parsed.isUsageHelpRequested()) {
            line.usage(door.out(), CommandLine.Help.Ansi.OFF);
            return Exit.FINE;
        }
        return command.run(parsed, language, door);
    }

    static int complain(String message, Door door) {
        door.out().flush();
        door.err().println(PROGRAM + ": " + message.lines().findFirst().orElse("wrong call"));
        door.err().flush();
        return Exit.BAD_CALL;
    }
}
