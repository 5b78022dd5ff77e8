// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.io.InputStream;
import java.io.PrintStream;
import java.time.LocalDate;
import java.util.function.Supplier;
import org.loomwright.app.BadCall;
import org.loomwright.ide.lsp.Serving;
import org.loomwright.ide.session.Pace;
import org.loomwright.lang.LoomReader;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code serve}: language services for any editor that speaks the Language Server Protocol. */
final class ServeCommand implements Command {

    private final Supplier<InputStream> input;

    ServeCommand() {
        this(() -> System.in);
    }

    /** With another input than the standard one. */
    ServeCommand(Supplier<InputStream> input) {
        this.input = input;
    }

    @Override
    public String name() {
        return "serve";
    }

    @Override
    public String summary() {
        return "Serve an editor on standard input and output (Language Server Protocol).";
    }

    @Override
    public void describe(CommandSpec spec) {
        // an editor starts it, and says everything else itself
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        PrintStream standard = System.out;
        System.setOut(System.err); // nothing but messages of the protocol goes to the client
        try {
            Serving serving = new Serving(() -> (LoomReader) language.reader(),
                    () -> StandardRules.engine(Desk.threads()), Settings.on(LocalDate.now()), Pace.USUAL,
                    Version.text());
            Serving.End end = serving.serve(input.get(), door.out());
            end.complaint().ifPresent(why -> Main.complain(why, door));
            return end.orderly() ? Exit.FINE : Exit.BAD_CALL;
        } finally {
            System.setOut(standard);
        }
    }
}
