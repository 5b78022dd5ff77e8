// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.app.BadCall;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.PlanHarness;
import org.loomwright.app.PlanHarness.Planned;
import org.loomwright.app.PlanHarness.WhatIf;
import org.loomwright.app.print.PlanPages;
import org.loomwright.app.print.WhatIfText;
import org.loomwright.app.write.WholeFiles;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.plan.HarnessPlanner;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code plan}: where must the breakouts stand, and how long must the branches be? */
final class PlanCommand implements Command {

    private static final String WHAT_IF = "--what-if";
    private static final String SECONDS = "--seconds";
    private static final long MOST_SECONDS = 1_000_000;
    private static final long NANOSECONDS = 1_000_000_000;

    @Override
    public String name() {
        return "plan";
    }

    @Override
    public String summary() {
        return "Compute breakouts and lengths of harnesses from the drawings that they cover, with proof.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.one(0, true, "PROJECT", "A folder with .loom files."));
        spec.addPositional(Flags.more(1, "HARNESS", "Harnesses (default: those with an unknown station or length)."));
        spec.addOption(Flags.to(false, "Write the planned sources to this folder; nothing is written otherwise."));
        spec.addOption(OptionSpec.builder(SECONDS).type(String.class).paramLabel("NUMBER").description("End the search"
                + " after so many seconds with the best that was found, and say what it may fall short of.").build());
        spec.addOption(Flags.flag(WHAT_IF, "Plan again without each drawing, and for the least copper: what each"
                + " costs."));
        Flags.format(spec);
        Flags.quiet(spec);
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.of(arguments);
        List<String> names = arguments.matchedPositionalValue(1, List.of());
        Cancel enough = enough(arguments.matchedOptionValue(SECONDS, ""));
        List<Planned> all = new ArrayList<>();
        List<WhatIf> whatIfs = new ArrayList<>();
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            Opened opened = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress)
                    .getFirst();
            PlanHarness plan = new PlanHarness(language.reader(), new HarnessPlanner(enough), new ChainJudge(),
                    FitDefaults.usual());
            for (WiringView harness : wanted(opened, names)) {
                Planned planned = plan.plan(harness, opened.project(), Cancel.NEVER, progress);
                all.add(planned);
                if (arguments.hasMatchedOption(WHAT_IF) && !flags.json() && planned.plan().found().isPresent()) {
                    whatIfs.add(plan.whatIf(planned, Cancel.NEVER));
                }
            }
        }
        String folder = arguments.matchedOptionValue("--to", "");
        List<String> written = folder.isEmpty() ? List.of() : write(all, door.folder().resolve(folder));
        door.out().print(flags.json() ? PlanPages.json(all)
                : PlanPages.text(all, Desk.palette(door), door.width()));
        whatIfs.forEach(each -> door.out().print(WhatIfText.text(each, Desk.palette(door), door.width())));
        if (!flags.json() && !flags.quiet()) {
            written.forEach(name -> door.out().print("\nwrote " + Path.of(folder).resolve(name) + "\n"));
        }
        return all.stream().allMatch(Planned::isWhole) ? Exit.FINE : Exit.FINDINGS;
    }

    private static Cancel enough(String seconds) throws BadCall {
        if (seconds.isEmpty()) {
            return Cancel.NEVER;
        }
        if (!seconds.matches("[0-9]{1,7}") || Long.parseLong(seconds) > MOST_SECONDS) {
            throw new BadCall(SECONDS + " takes a whole number of seconds, not \"" + seconds + "\"");
        }
        long end = System.nanoTime() + Long.parseLong(seconds) * NANOSECONDS;
        return () -> System.nanoTime() - end >= 0;
    }

    private static List<WiringView> wanted(Opened opened, List<String> names) throws BadCall {
        String project = opened.place().name();
        List<WiringView> wanted = new ArrayList<>();
        for (String name : names) {
            wanted.add(opened.project().harnesses().stream().filter(each -> each.name().equals(name)).findFirst()
                    .orElseThrow(() -> new BadCall("the project " + project + " has no harness " + name)));
        }
        if (names.isEmpty()) {
            opened.project().harnesses().stream().filter(PlanHarness::isOpen).forEach(wanted::add);
        }
        if (wanted.isEmpty()) {
            throw new BadCall(opened.project().harnesses().isEmpty() ? "the project " + project
                    + " has no harness to plan" : "no harness of " + project + " has an unknown station or length;"
                    + " name one to plan it anew");
        }
        for (WiringView each : wanted) {
            if (each.covers().isEmpty()) {
                throw new BadCall("harness " + each.name() + " covers no drawing, so there is nothing to plan it from");
            }
        }
        return wanted;
    }

    private static List<String> write(List<Planned> all, Path folder) throws BadCall {
        Map<String, Source> files = new LinkedHashMap<>();
        for (Planned each : all) {
            if (each.text().isPresent()) {
                Source source = each.text().get();
                Source other = files.put(Path.of(source.file()).getFileName().toString(), source);
                if (other != null) {
                    throw new BadCall("two planned harnesses stand in files of one name; plan them one by one");
                }
            }
        }
        WholeFiles writing = new WholeFiles();
        files.forEach((name, source) -> writing.add(folder.resolve(name),
                source.text().getBytes(StandardCharsets.UTF_8)));
        writing.create();
        return List.copyOf(files.keySet());
    }
}
