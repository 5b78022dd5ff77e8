// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.nio.file.Files;
import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.ProveProject;
import org.loomwright.app.ProveProject.Proof;
import org.loomwright.app.print.CheckText;
import org.loomwright.app.print.ProofPages;
import org.loomwright.app.write.SheetFolder;
import org.loomwright.quantity.Cancel;
import org.loomwright.rules.RuleBook;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.standard.StandardRules;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code prove}: the whole job. */
final class ProveCommand implements Command {

    private static final String OUTPUT = "loomwright-out";

    @Override
    public String name() {
        return "prove";
    }

    @Override
    public String summary() {
        return "Do the whole job: check every vehicle, prove the fit, write the bench's lists.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.one(0, true, "PROJECT", "A folder with .loom files."));
        spec.addOption(Flags.to(false,
                "The folder to write lists to (default: ./" + OUTPUT + "/ and the project's name)."));
        Flags.checking(spec);
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.of(arguments);
        RuleBook book = StandardRules.book();
        Proof proof;
        SheetFolder folder;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            Opened opened = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress)
                    .getFirst();
            folder = SheetFolder.at(door.folder(),
                    arguments.matchedOptionValue("--to", OUTPUT + "/" + opened.place().name()));
            proof = new ProveProject(StandardRules.engine(Desk.threads()), Desk.fit())
                    .prove(opened, flags.settings(), flags.failOn(), Cancel.NEVER, progress);
        }
        boolean stale = Files.exists(folder.path());
        folder.write(proof.tables());
        print(proof, flags, book.infos(), folder.shown(), stale, door);
        return proof.report().objects(flags.failOn()) ? Exit.FINDINGS : Exit.FINE;
    }

    private static void print(Proof proof, Flags flags, List<RuleInfo> rules, String folder, boolean stale, Door door) {
        if (flags.json()) {
            door.out().print(ProofPages.json(proof, flags.failOn(), flags.shown(), rules, folder));
            return;
        }
        door.out().print(new CheckText(Desk.palette(door)).findings(proof.opened(), proof.report(), flags.shown()));
        if (!flags.quiet()) {
            door.out().print(new ProofPages(Desk.palette(door), door.width())
                    .summary(proof, flags.failOn(), rules, folder, stale));
        }
    }
}
