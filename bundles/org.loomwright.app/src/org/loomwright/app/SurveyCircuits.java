// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.survey.BlockSurvey;
import org.loomwright.electric.survey.Inspectors;
import org.loomwright.electric.survey.Survey;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** Looks for electrical faults in every vehicle that can exist and every mode, however many vehicles there are. */
public final class SurveyCircuits {

    private SurveyCircuits() {
    }

    /**
     * One set of harnesses, looked through.
     *
     * @param survey what was found, with counts
     * @param modes  how many modes were looked at
     */
    public record Surveyed(BlockSurvey survey, int modes) {

        /** Returns the network. */
        public Schematic schematic() {
            return survey.survey().schematic();
        }
    }

    /**
     * Looks through everything that can be fitted. Mode by mode, so that what is done can be told and the rest left.
     *
     * @param mode    name of the only mode to look at; empty for all
     * @param threads the most threads to use; makes no difference to the result
     * @throws BadCall for a mode that no platform has, and for a project that has nothing to solve
     */
    public static List<Surveyed> of(Project project, String mode, int threads, Cancel cancel, Progress progress)
            throws BadCall {
        List<Schematic> all = Schematic.of(project).stream().filter(each -> mode.isEmpty()
                || each.mode(mode).isPresent()).toList();
        if (all.isEmpty()) {
            throw new BadCall(mode.isEmpty() ? "nothing is wired in this project, so there is nothing to solve"
                    : "no platform has a mode '" + mode + "'");
        }
        List<Surveyed> surveyed = new ArrayList<>();
        for (Schematic schematic : all) {
            List<Mode> modes = mode.isEmpty() ? schematic.modes() : List.of(schematic.mode(mode).orElseThrow());
            surveyed.add(new Surveyed(BlockSurvey.of(schematic, modes, Inspectors.all(), Survey.MOST, threads,
                    cancel, progress), modes.size()));
        }
        return surveyed;
    }
}
