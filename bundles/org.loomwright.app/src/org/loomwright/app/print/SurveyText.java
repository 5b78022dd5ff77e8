// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.Locale;
import java.util.stream.Collectors;
import org.loomwright.app.SurveyCircuits.Surveyed;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.survey.Survey;

/** What is wrong with currents and voltages in some vehicle and mode, for people. */
public final class SurveyText {

    private static final String CAUTION = "Computed from what the sources state, not measured. Check against the"
            + " vehicle in front of you; where the law, its\nmaker or a licensed practitioner asks for"
            + " more, do that.\n";

    private final Palette palette;

    public SurveyText(Palette palette) {
        this.palette = palette;
    }

    /** One set of harnesses: each fault with its worst mode and its vehicles, then what was done to find them. */
    public String of(Surveyed surveyed) {
        StringBuilder out = new StringBuilder();
        Survey survey = surveyed.survey().survey();
        var fitment = survey.schematic().fitment();
        var platform = fitment.platform().platform();
        out.append(palette.paint(Tone.HEAD, (platform.title().isEmpty() ? platform.name().text() : platform.title())
                + ": every vehicle; " + fitment.words())).append("\n\n");
        String rule = "";
        for (Survey.Found found : survey.found()) {
            if (!rule.equals(found.fault().rule())) {
                rule = found.fault().rule();
                out.append(palette.paint(Tone.MARGIN, rule)).append('\n');
            }
            fault(found, out);
        }
        out.append(survey.found().isEmpty() ? "nothing was found\n" : "").append('\n').append(counts(surveyed))
                .append('\n');
        if (!survey.bounded().isEmpty()) {
            out.append("bounded: there are too many assignments, or no bounds that hold, in mode ").append(survey
                    .bounded().stream().map(Mode::name).collect(Collectors.joining(", "))).append(
                            "; some vehicles may have faults that are not listed\n");
        }
        return out.append(CAUTION).toString();
    }

    private static void fault(Survey.Found found, StringBuilder out) {
        out.append("  ").append(Cells.printable(found.fault().words())).append(", in mode ")
                .append(found.mode().name())
                .append(found.fault().memory().isEmpty() ? "" : " (not judged: from memory)").append("\n    ")
                .append(found.when().words()).append(" (").append(found.when().tally()).append(")\n");
        if (!found.exact()) {
            out.append("    bounds: ").append(found.sure().isNever() ? "certain for none of them" : "certain for "
                    + found.sure().words() + " (" + found.sure().tally() + ")").append(
                            "; for the others it depends on what other circuits draw\n");
        }
        out.append("    try: ").append(Cells.printable(found.fault().advice())).append('\n');
    }

    private static String counts(Surveyed surveyed) {
        Survey survey = surveyed.survey().survey();
        return String.format(Locale.ROOT, "%,d vehicles in %,d %s: %,d blocks, %,d assignments, %,d networks solved",
                survey.schematic().fitment().domain().count(), surveyed.modes(), surveyed.modes() == 1 ? "mode"
                        : "modes", surveyed.survey().blocks(), survey.assignments(), survey.solves());
    }
}
