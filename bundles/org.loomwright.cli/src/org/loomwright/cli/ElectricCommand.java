// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.SizeCircuits;
import org.loomwright.app.SolveCircuits;
import org.loomwright.app.SolveCircuits.Solved;
import org.loomwright.app.SurveyCircuits;
import org.loomwright.app.UpgradeCircuits;
import org.loomwright.app.print.ElectricJson;
import org.loomwright.app.print.ElectricPlot;
import org.loomwright.app.print.ElectricText;
import org.loomwright.app.print.SizesJson;
import org.loomwright.app.print.SizesText;
import org.loomwright.app.print.SurveyJson;
import org.loomwright.app.print.SurveyText;
import org.loomwright.app.print.UpgradesJson;
import org.loomwright.app.print.UpgradesText;
import org.loomwright.app.write.WholeFiles;
import org.loomwright.quantity.Cancel;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code electric}: what flows in each wire, and what each load gets. */
final class ElectricCommand implements Command {

    private static final String VEHICLE = "--vehicle";
    private static final String MODE = "--mode";
    private static final String CIRCUIT = "--circuit";
    private static final String PLOT = "--plot";
    private static final String SIZES = "--sizes";
    private static final String UPGRADES = "--upgrades";
    private static final String EVERY = "--every";

    @Override
    public String name() {
        return "electric";
    }

    @Override
    public String summary() {
        return "Compute currents, voltages and temperatures, mode by mode.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.one(0, true, "PROJECT", "A folder with .loom files."));
        spec.addOption(option(VEHICLE, "WORDS", "One vehicle by its choices, '1967 coupe heater' for example; of all"
                + " others the first."));
        spec.addOption(option(MODE, "NAME", "Print all tables of this mode (default: a line for each)."));
        spec.addOption(option(CIRCUIT, "NAME", "Print only what belongs to this circuit, or is fed through it."));
        spec.addOption(option(PLOT, "FILE.svg", "Draw the voltage along the circuit from source to ground; needs "
                + MODE + "."));
        spec.addOption(Flags.flag(SIZES, "Print the least fuse and the smallest gauge that would do in every vehicle"
                + " and mode, or in the one of " + VEHICLE + "."));
        spec.addOption(Flags.flag(UPGRADES, "Print what each upgrade of the vehicle changes, before and after, over"
                + " all modes."));
        spec.addOption(Flags.flag(EVERY, "Look for faults in every vehicle and every mode, or in that of " + MODE
                + ", and print the vehicles that have each; takes minutes where vehicles differ in much."));
        Flags.format(spec);
        Flags.quiet(spec);
    }

    private static OptionSpec option(String name, String label, String description) {
        return OptionSpec.builder(name).type(String.class).paramLabel(label).description(description).build();
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.of(arguments);
        String mode = arguments.matchedOptionValue(MODE, "");
        String circuit = arguments.matchedOptionValue(CIRCUIT, "");
        String plot = arguments.matchedOptionValue(PLOT, "");
        if (!plot.isEmpty() && mode.isEmpty()) {
            throw new BadCall(PLOT + " draws one mode; name it with " + MODE);
        }
        if (arguments.hasMatchedOption(SIZES)) {
            if (!mode.isEmpty() || !circuit.isEmpty() || !plot.isEmpty()) {
                throw new BadCall(SIZES + " looks at all modes and circuits; leave " + MODE + ", " + CIRCUIT + " and "
                        + PLOT + " out");
            }
            return sizes(arguments, language, door, flags);
        }
        if (arguments.hasMatchedOption(EVERY)) {
            if (arguments.hasMatchedOption(VEHICLE) || !circuit.isEmpty() || !plot.isEmpty()
                    || arguments.hasMatchedOption(UPGRADES)) {
                throw new BadCall(EVERY + " looks at all vehicles and circuits; leave " + VEHICLE + ", " + CIRCUIT
                        + ", " + PLOT + " and " + UPGRADES + " out");
            }
            return every(arguments, language, door, flags, mode);
        }
        if (arguments.hasMatchedOption(UPGRADES)) {
            if (!mode.isEmpty() || !circuit.isEmpty() || !plot.isEmpty()) {
                throw new BadCall(UPGRADES + " looks at all modes and circuits; leave " + MODE + ", " + CIRCUIT
                        + " and " + PLOT + " out");
            }
            return upgrades(arguments, language, door, flags);
        }
        Opened opened;
        List<Solved> solved;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            opened = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress).getFirst();
            solved = SolveCircuits.of(opened.project(), arguments.matchedOptionValue(VEHICLE, ""), mode);
        }
        if (!plot.isEmpty()) {
            plot(solved, circuit, plot, door);
        }
        if (flags.json()) {
            door.out().print(ElectricJson.of(opened.place().name(), solved, circuit));
            return Exit.FINE;
        }
        ElectricText text = new ElectricText(Desk.palette(door), door.outTerminal() ? door.width() : 140);
        for (Solved each : solved) {
            door.out().print(text.of(each, circuit, !mode.isEmpty() || !circuit.isEmpty()));
        }
        return Exit.FINE;
    }

    private static int every(ParseResult arguments, Language language, Door door, Flags flags, String mode)
            throws BadCall {
        Opened opened;
        List<SurveyCircuits.Surveyed> surveyed;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            opened = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress).getFirst();
            surveyed = SurveyCircuits.of(opened.project(), mode, Runtime.getRuntime().availableProcessors(),
                    Cancel.NEVER, progress);
        }
        if (flags.json()) {
            door.out().print(SurveyJson.of(opened.place().name(), surveyed));
            return Exit.FINE;
        }
        SurveyText text = new SurveyText(Desk.palette(door));
        surveyed.forEach(each -> door.out().print(text.of(each)));
        return Exit.FINE;
    }

    private static int upgrades(ParseResult arguments, Language language, Door door, Flags flags) throws BadCall {
        Opened opened;
        List<UpgradeCircuits.Upgraded> upgraded;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            opened = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress)
                    .getFirst();
            upgraded = UpgradeCircuits.of(opened.project(), arguments.matchedOptionValue(VEHICLE, ""));
        }
        if (upgraded.isEmpty()) {
            throw new BadCall("this vehicle can have no upgrade, so there is nothing to compare");
        }
        if (flags.json()) {
            door.out().print(UpgradesJson.of(opened.place().name(), upgraded));
            return Exit.FINE;
        }
        door.out().print(new UpgradesText(Desk.palette(door), door.outTerminal() ? door.width() : 140).of(upgraded));
        return Exit.FINE;
    }

    private static int sizes(ParseResult arguments, Language language, Door door, Flags flags) throws BadCall {
        Opened opened;
        List<SizeCircuits.Sized> sized;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            opened = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress).getFirst();
            sized = SizeCircuits.of(opened.project(), arguments.matchedOptionValue(VEHICLE, ""), Cancel.NEVER);
        }
        if (flags.json()) {
            door.out().print(SizesJson.of(opened.place().name(), sized));
            return Exit.FINE;
        }
        SizesText text = new SizesText(Desk.palette(door), door.outTerminal() ? door.width() : 140);
        sized.forEach(each -> door.out().print(text.of(each)));
        return Exit.FINE;
    }

    /** Draws what is fitted last: the kit of ours where there is one. */
    private static void plot(List<Solved> solved, String circuit, String file, Door door) throws BadCall {
        Solved last = solved.stream().filter(each -> each.schematic().fitment().ours()).findFirst()
                .orElse(solved.getLast());
        String svg = ElectricPlot.of(last, last.points().getFirst(), circuit).orElseThrow(() -> new BadCall(
                "nothing to draw: no load takes current" + (circuit.isEmpty() ? "" : " through circuit '" + circuit
                        + "'") + " in this mode"));
        new WholeFiles().add(door.folder().resolve(file), svg.getBytes(StandardCharsets.UTF_8)).write();
    }
}
