// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.print.FactsText;
import org.loomwright.quantity.Progress;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code facts}: what sources state, for diffs that show no layout. */
final class FactsCommand implements Command {

    @Override
    public String name() {
        return "facts";
    }

    @Override
    public String summary() {
        return "List what sources state, a line a fact and in one order, so that a text diff shows no layout.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.paths("PATH", "Folders or files."));
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        List<String> paths = arguments.matchedPositionalValue(0, List.of());
        for (Opened opened : Desk.open(language, door, paths, Progress.NONE)) {
            door.out().print(FactsText.of(opened));
        }
        return Exit.FINE;
    }
}
