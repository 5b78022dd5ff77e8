// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.app.BadCall;
import org.loomwright.app.CheckProject;
import org.loomwright.app.CheckProjects;
import org.loomwright.app.CheckProjects.Outcome;
import org.loomwright.app.Checked;
import org.loomwright.app.known.Baseline;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.app.revision.SinceRevision;
import org.loomwright.quantity.Cancel;
import org.loomwright.rules.standard.StandardRules;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code check}: every rule on every vehicle that can exist. */
final class CheckCommand implements Command {

    private static final String NO_CACHE = "--no-cache";
    private static final String SINCE = "--since";
    private static final String FIX = "--fix";
    private static final String DRY_RUN = "--dry-run";

    @Override
    public String name() {
        return "check";
    }

    @Override
    public String summary() {
        return "Check drawings and harnesses for every vehicle that can exist.";
    }

    /** A project that did not change needs no reading, where something is kept. */
    @Override
    public boolean reads(List<String> arguments) {
        return arguments.contains(NO_CACHE);
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.paths("PATH", "Folders, each a project of its own, or .loom files of one project."));
        Flags.checkingForServers(spec);
        BaselineFlags.describe(spec);
        spec.addOption(OptionSpec.builder(SINCE).type(String.class).paramLabel("REV").description(
                "Set aside the findings that this git revision had already: only what is new counts.").build());
        spec.addOption(Flags.flag(NO_CACHE, "Check anew, and keep no result for the next time."));
        spec.addOption(Flags.flag(FIX, "Make the changes that leave no doubt, write the files, and check again."));
        spec.addOption(Flags.flag(DRY_RUN, "With " + FIX + ": write nothing, print the difference."));
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.ofServers(arguments);
        BaselineFlags baselines = BaselineFlags.of(arguments, door.folder());
        List<ProjectPlace> places = ProjectPlace.find(door.folder(), arguments.matchedPositionalValue(0, List.of()));
        if (arguments.hasMatchedOption(FIX)) {
            if (arguments.hasMatchedOption(SINCE) || baselines.isAsked()) {
                throw new BadCall(FIX + " mends whatever it can, known or not: call check again with " + SINCE
                        + " or a baseline");
            }
            return Fixing.run(places, arguments.hasMatchedOption(DRY_RUN), flags, language, door);
        }
        if (arguments.hasMatchedOption(DRY_RUN)) {
            throw new BadCall(DRY_RUN + " says what " + FIX + " would do: give both");
        }
        List<Outcome> outcomes;
        List<Checked> checked = new ArrayList<>();
        Optional<SinceRevision.Since> since = Optional.empty();
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            // No method reference: that would load all rules, which a kept answer does without.
            CheckProject check = new CheckProject(language::reader, threads -> StandardRules.engine(threads),
                    Caches.of(door, !arguments.hasMatchedOption(NO_CACHE)));
            Optional<SinceRevision> then = arguments.hasMatchedOption(SINCE)
                    ? Optional.of(SinceRevision.inGit(check, arguments.matchedOptionValue(SINCE, "")))
                    : Optional.empty();
            if (then.isPresent()) { // no lambda: that would load all of git
                then.get().begin(door.folder(), places, flags.settings());
            }
            outcomes = new CheckProjects(check, Desk.threads())
                    .check(places, flags.settings(), Cancel.NEVER, progress);
            outcomes.forEach(outcome -> outcome.checked().ifPresent(checked::add));
            if (then.isPresent()) {
                since = Optional.of(then.get().apply(door.folder(), checked, flags.settings(), Cancel.NEVER, progress));
            }
        }
        if (outcomes.stream().allMatch(outcome -> outcome.checked().isEmpty())) {
            throw new BadCall(outcomes.getFirst().refusal());
        }
        Optional<Baseline.Compared> compared = baselines.apply(checked, door);
        CheckOutput output = new CheckOutput(outcomes, checked, flags, compared, since);
        output.print(door);
        return output.exitCode();
    }
}
