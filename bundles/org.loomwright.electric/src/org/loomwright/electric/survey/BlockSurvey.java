// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.survey.Survey.Found;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/**
 * What is wrong in any vehicle and any mode of a network with far too many vehicles to solve each. Every {@link Blocks
 * block} is solved with the core for each assignment of the conditions of the two alone; what the other blocks draw
 * enters as a least and a greatest current at each stiff junction. A fault that is there at both ends, whatever other
 * wires share its bundles, is sure; one that is there at one end only is one that some vehicles may have. Both ends
 * are enough as long as what a piece carries rises or falls with the voltage of its feed.
 *
 * @param survey what was found; its assignments are those of all blocks
 * @param blocks how many blocks there are, over all modes
 */
public record BlockSurvey(Survey survey, long blocks) {

    /**
     * Looks at every vehicle of a network in some modes.
     *
     * @param most    the most assignments of a block
     * @param threads how many modes are looked at side by side; makes no difference to the result
     */
    public static BlockSurvey of(Schematic schematic, List<Mode> modes, List<Inspector> inspectors, int most,
            int threads, Cancel cancel) {
        return of(schematic, modes, inspectors, most, threads, ModeSurvey.FACTOR, cancel, Progress.NONE);
    }

    /** The same that tells which modes are done, in their order, by the thread that calls. */
    public static BlockSurvey of(Schematic schematic, List<Mode> modes, List<Inspector> inspectors, int most,
            int threads, Cancel cancel, Progress progress) {
        return of(schematic, modes, inspectors, most, threads, ModeSurvey.FACTOR, cancel, progress);
    }

    /**
     * The same with another idea of how much work a block is.
     *
     * @param factor by how much the work of a block counts more than that of a whole vehicle; 0 takes blocks always
     */
    static BlockSurvey of(Schematic schematic, List<Mode> modes, List<Inspector> inspectors, int most, int threads,
            int factor, Cancel cancel) {
        return of(schematic, modes, inspectors, most, threads, factor, cancel, Progress.NONE);
    }

    private static BlockSurvey of(Schematic schematic, List<Mode> modes, List<Inspector> inspectors, int most,
            int threads, int factor, Cancel cancel, Progress progress) {
        List<ModeSurvey> surveys = new ArrayList<>();
        try (ExecutorService pool = Executors.newFixedThreadPool(threads)) {
            List<Future<ModeSurvey>> all = modes.stream().map(mode -> pool.submit(() -> new ModeSurvey(schematic, mode,
                    inspectors, most, factor).solve(cancel))).toList();
            for (Future<ModeSurvey> each : all) {
                progress.report("solving " + schematic.fitment().words() + ", mode " + modes.get(surveys.size())
                        .name(), surveys.size(), modes.size());
                surveys.add(each.get());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new java.util.concurrent.CancellationException();
        } catch (ExecutionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : new IllegalStateException(e.getCause());
        }
        return of(schematic, surveys);
    }

    /**
     * The same by one thread and with so much work at most: modes are looked at in order as long as their assignments
     * together, those of all blocks, are no more than a budget. A mode that goes beyond it is listed as bounded, and
     * nothing of it is solved.
     *
     * @param budget the most assignments over all modes
     */
    public static BlockSurvey within(Schematic schematic, List<Mode> modes, List<Inspector> inspectors, int budget,
            Cancel cancel) {
        List<ModeSurvey> surveys = new ArrayList<>();
        long left = budget;
        for (Mode mode : modes) {
            cancel.check();
            ModeSurvey survey = new ModeSurvey(schematic, mode, inspectors, (int) Math.max(1, left),
                    ModeSurvey.FACTOR);
            surveys.add(survey);
            if (survey.isWhole() && survey.assignments() <= left) {
                left -= survey.assignments();
                survey.solve(cancel);
            }
        }
        return of(schematic, surveys);
    }

    private static BlockSurvey of(Schematic schematic, List<ModeSurvey> surveys) {
        Map<String, Found> found = new LinkedHashMap<>();
        List<Mode> bounded = new ArrayList<>();
        long assignments = 0;
        long solves = 0;
        long blocks = 0;
        for (ModeSurvey each : surveys) {
            each.found().forEach((key, one) -> found.merge(key, one, Found::and));
            assignments += each.isSolved() ? each.assignments() : 0;
            solves += each.solves();
            blocks += each.blocks();
            if (!each.complete()) {
                bounded.add(each.mode());
            }
        }
        return new BlockSurvey(new Survey(schematic, Survey.sorted(found), assignments, solves, bounded), blocks);
    }
}
