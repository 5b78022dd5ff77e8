// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.SolveCircuits.Solved;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.sizing.Demands;
import org.loomwright.electric.sizing.Sizes;
import org.loomwright.electric.survey.Fed;
import org.loomwright.electric.survey.Survey;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;

/** Finds the smallest gauges and the least fuses that would do, in every vehicle or in one. */
public final class SizeCircuits {

    private SizeCircuits() {
    }

    /**
     * One set of harnesses with the sizes that would do.
     *
     * @param schematic the network
     * @param vehicles  the vehicles that were looked at, for people
     * @param sizes     what would do in all of them
     * @param solves    how many networks were solved
     * @param bounded   true when some vehicles were left out because there are too many
     */
    public record Sized(Schematic schematic, String vehicles, Sizes sizes, long solves, boolean bounded) {
    }

    /**
     * Finds the sizes of everything that can be fitted.
     *
     * @param words choices of one vehicle; empty for every vehicle that can exist
     * @throws BadCall for a vehicle that does not exist, and for a project that has nothing to solve
     */
    public static List<Sized> of(Project project, String words, Cancel cancel) throws BadCall {
        List<Sized> all = new ArrayList<>();
        if (!words.isEmpty()) {
            for (Solved solved : SolveCircuits.of(project, words, "")) {
                Demands demands = new Demands();
                for (OperatingPoint point : solved.points()) {
                    demands.inspect(point, new Fed(point), solved.ratings());
                }
                all.add(new Sized(solved.schematic(), solved.words(), Sizes.of(demands, solved.ratings(),
                        Ampacity.cfr(), project.parts().values()), solved.points().size(), false));
            }
            return all;
        }
        for (Schematic schematic : Schematic.of(project)) {
            Demands demands = new Demands();
            Survey survey = Survey.of(schematic, schematic.modes(), List.of(demands), Survey.MOST, cancel);
            all.add(new Sized(schematic, "all " + String.format(java.util.Locale.ROOT, "%,d",
                    schematic.fitment().domain().count()) + " vehicles", Sizes.of(demands, new Ratings(schematic,
                            Ampacity.cfr()), Ampacity.cfr(), project.parts().values()), survey.solves(),
                    !survey.bounded().isEmpty()));
        }
        if (all.isEmpty()) {
            throw new BadCall("nothing is wired in this project, so there is nothing to size");
        }
        return all;
    }
}
