// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import org.loomwright.app.BadCall;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.quantity.Cancel;

/** How long a look at 2 to the power of 20 vehicles with 300 wires takes in eight modes, block by block. */
final class SurveyBenchmark {

    private SurveyBenchmark() {
    }

    public static void main(String[] arguments) throws IOException, BadCall {
        Path folder = Files.createTempDirectory("survey");
        Schematic schematic = OptionsPlatform.of(folder, 1, 20, 27, 8, 6);
        List<Mode> modes = schematic.modes().stream().filter(Mode::written).toList();
        long wires = schematic.pieces().stream().filter(each -> each.role() == Role.WIRE).count();
        System.out.printf(Locale.ROOT, "%,d vehicles, %d wires, %d modes%n", schematic.fitment().domain().count(),
                wires, modes.size());
        for (int threads : new int[] {2, 2, 1}) {
            Duration before = processor();
            long start = System.nanoTime();
            BlockSurvey survey = BlockSurvey.of(schematic, modes, Inspectors.all(), Survey.MOST, threads,
                    Cancel.NEVER);
            double seconds = (System.nanoTime() - start) / 1e9;
            System.out.printf(Locale.ROOT, "%d threads %.1f s (%.1f s of processors): %,d blocks,"
                    + " %,d assignments, %,d networks solved;"
                    + " %d faults, %d of them exact, %d modes bounded%n", threads, seconds,
                    processor().minus(before).toMillis() / 1e3, survey.blocks(),
                    survey.survey().assignments(), survey.survey().solves(), survey.survey().found().size(),
                    survey.survey().found().stream().filter(Survey.Found::exact).count(),
                    survey.survey().bounded().size());
        }
    }

    /** What this process has taken of all processors, its compiler and collector included. */
    private static Duration processor() {
        return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO);
    }
}
