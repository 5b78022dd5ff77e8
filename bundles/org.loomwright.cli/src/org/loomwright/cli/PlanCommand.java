// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.loomwright.app.BadCall;
import org.loomwright.app.DraftAdaptor;
import org.loomwright.app.DraftHarness;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.PlanHarness;
import org.loomwright.app.PlanHarness.Planned;
import org.loomwright.app.PlanHarness.WhatIf;
import org.loomwright.app.print.AdaptorText;
import org.loomwright.app.print.DraftText;
import org.loomwright.app.print.PlanPage;
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
    private static final String COVERS = "--covers";
    private static final String ADAPTOR = "--adaptor";
    private static final String KEEP = "--keep";
    private static final String LENGTHS = "--lengths-only";
    private static final String NAME = "--name";
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
        spec.addOption(OptionSpec.builder(COVERS).type(String.class).paramLabel("DRAWING,...").description("Draft a new"
                + " harness that covers these drawings, with all that they connect, and plan it.").build());
        spec.addOption(OptionSpec.builder(ADAPTOR).type(String.class).paramLabel("DRAWING:CONNECTOR,DRAWING:CONNECTOR")
                .description("Draft a lead that joins what has the same function in two connectors.").build());
        spec.addOption(OptionSpec.builder(NAME).type(String.class).paramLabel("NAME").description("What the new harness"
                + " is called (default: planned).").build());
        spec.addOption(OptionSpec.builder(SECONDS).type(String.class).paramLabel("NUMBER").description("End the search"
                + " after so many seconds with the best that was found, and say what it may fall short of.").build());
        spec.addOption(Flags.flag(WHAT_IF, "Plan again without each drawing, and for the least copper: what each"
                + " costs."));
        spec.addOption(Flags.flag(KEEP, "Keep the stations and lengths that are there, and change only what must be."));
        spec.addOption(Flags.flag(LENGTHS, "Take nothing over that the drawings connect and the harness does not."));
        Flags.formatOnPages(spec);
        Flags.quiet(spec);
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.ofPages(arguments);
        List<String> names = arguments.matchedPositionalValue(1, List.of());
        Cancel enough = enough(arguments.matchedOptionValue(SECONDS, ""));
        List<String> covers = covers(arguments, names);
        List<Planned> all = new ArrayList<>();
        List<WhatIf> whatIfs = new ArrayList<>();
        List<DraftHarness.Drafted> drafts = new ArrayList<>();
        Opened opened;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            opened = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress).getFirst();
            PlanHarness plan = new PlanHarness(language.reader(), new HarnessPlanner(enough), new ChainJudge(),
                    FitDefaults.usual());
            if (arguments.hasMatchedOption(COVERS)) {
                drafts.add(new DraftHarness(language.reader(), plan).draft(opened.project(), covers,
                        name(arguments.matchedOptionValue(NAME, "planned")), Cancel.NEVER, progress));
                all.add(drafts.getFirst().planned());
            } else if (!arguments.hasMatchedOption(ADAPTOR)) {
                for (WiringView harness : wanted(opened, names)) {
                    boolean keep = arguments.hasMatchedOption(KEEP);
                    all.add(!arguments.hasMatchedOption(LENGTHS)
                            ? plan.planTaking(harness, opened.project(), keep, Cancel.NEVER, progress)
                            : keep ? plan.planAgain(harness, opened.project(), Cancel.NEVER, progress)
                            : plan.plan(harness, opened.project(), Cancel.NEVER, progress));
                }
            }
            for (Planned each : all) {
                if (arguments.hasMatchedOption(WHAT_IF) && each.plan().found().isPresent()) {
                    whatIfs.add(plan.whatIf(each, Cancel.NEVER));
                }
            }
        }
        if (arguments.hasMatchedOption(ADAPTOR)) {
            return adaptor(arguments, opened, language, door, flags);
        }
        String folder = arguments.matchedOptionValue("--to", "");
        List<Source> sources = new ArrayList<>(sources(all));
        if (sources.isEmpty()) {
            drafts.forEach(each -> sources.add(each.text()));
        }
        List<String> written = folder.isEmpty() ? List.of() : write(sources, door.folder().resolve(folder));
        switch (flags.format()) {
            case JSON -> door.out().print(PlanPages.json(all, drafts, whatIfs));
            case HTML -> door.out().print(PlanPage.of(opened.place().name(), all, drafts, whatIfs));
            default -> {
                door.out().print(PlanPages.text(all, Desk.palette(door), door.width()));
                drafts.forEach(each -> door.out().print(DraftText.text(each)));
                whatIfs.forEach(each -> door.out().print(WhatIfText.text(each, Desk.palette(door), door.width())));
                wrote(written, folder, flags, door);
            }
        }
        return all.stream().allMatch(Planned::isWhole) ? Exit.FINE : Exit.FINDINGS;
    }

    private static void wrote(List<String> written, String folder, Flags flags, Door door) {
        if (!flags.quiet()) {
            written.forEach(name -> door.out().print("\nwrote " + Path.of(folder).resolve(name) + "\n"));
        }
    }

    private static int adaptor(ParseResult arguments, Opened opened, Language language, Door door, Flags flags)
            throws BadCall {
        List<String> sides = words(arguments.matchedOptionValue(ADAPTOR, ""));
        if (sides.size() != 2) {
            throw new BadCall(ADAPTOR + " takes DRAWING:CONNECTOR,DRAWING:CONNECTOR");
        }
        if (flags.format() == Format.HTML) {
            throw new BadCall(ADAPTOR + " has no page; --format is text or json");
        }
        DraftAdaptor.Drafted drafted = new DraftAdaptor(language.reader()).draft(opened.project(), sides.get(0),
                sides.get(1), name(arguments.matchedOptionValue(NAME, "planned")), Cancel.NEVER);
        String folder = arguments.matchedOptionValue("--to", "");
        List<String> written = folder.isEmpty() ? List.of() : write(List.of(drafted.source()),
                door.folder().resolve(folder));
        door.out().print(flags.json() ? AdaptorText.json(drafted) : AdaptorText.text(drafted));
        if (!flags.json()) {
            wrote(written, folder, flags, door);
        }
        return drafted.draft().joints().isEmpty() ? Exit.FINDINGS : Exit.FINE;
    }

    private static List<String> words(String list) {
        return Arrays.stream(list.split(",")).map(String::strip).filter(each -> !each.isEmpty()).toList();
    }

    private static List<String> covers(ParseResult arguments, List<String> names) throws BadCall {
        boolean covers = arguments.hasMatchedOption(COVERS);
        if (covers && arguments.hasMatchedOption(ADAPTOR)) {
            throw new BadCall(COVERS + " and " + ADAPTOR + " make two different things; ask for one of them");
        }
        if (!covers && !arguments.hasMatchedOption(ADAPTOR)) {
            if (arguments.hasMatchedOption(NAME)) {
                throw new BadCall(NAME + " is for a new harness; say what it covers with " + COVERS);
            }
            return List.of();
        }
        for (String option : List.of(KEEP, LENGTHS)) {
            if (arguments.hasMatchedOption(option)) {
                throw new BadCall(option + " is for a harness that is there");
            }
        }
        if (!names.isEmpty()) {
            throw new BadCall((covers ? COVERS : ADAPTOR) + " makes a new harness, so no harness is named besides; its"
                    + " name goes behind " + NAME);
        }
        return words(arguments.matchedOptionValue(COVERS, ""));
    }

    private static String name(String name) throws BadCall {
        if (!name.matches("[A-Za-z_][A-Za-z_0-9]*")) {
            throw new BadCall(NAME + " takes letters, digits and _, a letter first, not \"" + name + "\"");
        }
        return name;
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

    private static List<Source> sources(List<Planned> all) {
        return all.stream().flatMap(each -> Stream.concat(each.text().stream(), each.refusal().stream()
                .flatMap(refusal -> refusal.texts().stream()))).toList();
    }

    private static List<String> write(List<Source> sources, Path folder) throws BadCall {
        Map<String, Source> files = new LinkedHashMap<>();
        for (Source source : sources) {
            Source other = files.put(Path.of(source.file()).getFileName().toString(), source);
            if (other != null) {
                throw new BadCall("two planned harnesses stand in files of one name; plan them one by one");
            }
        }
        WholeFiles writing = new WholeFiles();
        files.forEach((name, source) -> writing.add(folder.resolve(name),
                source.text().getBytes(StandardCharsets.UTF_8)));
        writing.create();
        return List.copyOf(files.keySet());
    }
}
