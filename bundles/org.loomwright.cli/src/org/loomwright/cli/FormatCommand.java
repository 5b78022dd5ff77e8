// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.FormatSources;
import org.loomwright.app.FormatSources.Formatted;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.app.write.WholeFiles;
import org.loomwright.harness.Problem;
import org.loomwright.quantity.Cancel;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code format}: the canonical form of sources. */
final class FormatCommand implements Command {

    private static final String CHECK = "--check";

    @Override
    public String name() {
        return "format";
    }

    @Override
    public String summary() {
        return "Bring sources into their canonical form. Only spaces and line ends change.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.paths("PATH", "Folders or .loom files."));
        spec.addOption(Flags.flag(CHECK, "Change nothing; end with 1 if something would change."));
        Flags.quiet(spec);
    }

    @Override
    public boolean reads(List<String> arguments) {
        return false;
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.of(arguments);
        boolean check = arguments.hasMatchedOption(CHECK);
        List<String> paths = arguments.matchedPositionalValue(0, List.of());
        WholeFiles files = new WholeFiles();
        List<String> changed = new ArrayList<>();
        int refused = 0;
        int seen = 0;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            for (ProjectPlace place : ProjectPlace.find(door.folder(), paths)) {
                Formatted formatted = FormatSources.format(place.inputs(), Runtime.getRuntime().availableProcessors(),
                        Cancel.NEVER, progress);
                formatted.changed().forEach(name -> {
                    files.add(place.root().resolve(name), formatted.forms().get(name));
                    changed.add(place.prefix() + name);
                });
                List<Problem> problems = formatted.sources().stream()
                        .flatMap(each -> each.problems().stream()).toList();
                problems.forEach(problem -> door.err().println(place.prefix() + problem.span().at() + ": "
                        + problem.message()));
                refused += problems.size();
                seen += place.inputs().size();
            }
        }
        if (!check) {
            files.rewrite();
        }
        print(changed, seen, refused, check, flags, door);
        return refused > 0 || check && !changed.isEmpty() ? Exit.FINDINGS : Exit.FINE;
    }

    private static void print(List<String> changed, int seen, int refused, boolean check, Flags flags, Door door) {
        if (check || !flags.quiet()) {
            changed.forEach(name -> door.out().print((check ? "would change " : "changed ") + name + "\n"));
        }
        if (!flags.quiet()) {
            door.out().print(changed.size() + " of " + seen + (seen == 1 ? " file" : " files")
                    + (check ? " would change" : " changed")
                    + (refused > 0 ? ", " + refused + " not read" : "") + "\n");
        }
    }
}
