// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitJudge;
import org.loomwright.fit.FitProblem;
import org.loomwright.fit.FitReport;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Severity;

/** Judges every harness of a project against the drawings that it covers. Safe for use by several threads. */
public final class JudgeFit {

    private final FitJudge judge;
    private final FitDefaults defaults;

    public JudgeFit(FitJudge judge, FitDefaults defaults) {
        this.judge = judge;
        this.defaults = defaults;
    }

    /**
     * A harness with its judgement.
     *
     * @param harness the harness
     * @param titles  words for the drawings that it covers, by name
     * @param report  its judgement
     */
    public record Judged(WiringView harness, Map<String, String> titles, FitReport report) {

        /** True for a harness that covers no drawing: there is nothing that it must fit. */
        public boolean coversNothing() {
            return harness.wiring().ours().covers().isEmpty();
        }

        /** What the verdict weighs: an error where it does not fit, a warning where that is not proved. */
        public Optional<Severity> weight() {
            if (coversNothing()) {
                return Optional.empty();
            }
            return switch (report.verdict()) {
                case FITS -> Optional.empty();
                case NOT_PROVED -> Optional.of(Severity.WARNING);
                case DOES_NOT_FIT -> Optional.of(Severity.ERROR);
            };
        }

        /** Whether the verdict weighs at least that much. */
        public boolean objects(Severity threshold) {
            return weight().filter(weight -> weight.atLeast(threshold)).isPresent();
        }
    }

    /** Judges the harnesses in the order of the sources. */
    public List<Judged> judge(Project project, Cancel cancel, Progress progress) {
        List<Judged> judged = new ArrayList<>();
        List<WiringView> harnesses = project.harnesses();
        for (WiringView harness : harnesses) {
            progress.report("judging the fit of " + harness.name(), judged.size(), harnesses.size());
            Map<String, String> titles = new TreeMap<>();
            harness.covers().forEach(name -> project.wiring(name)
                    .ifPresent(drawing -> titles.put(name, drawing.wiring().title())));
            judged.add(new Judged(harness, titles, judge.judge(FitProblem.of(harness, project, defaults), cancel)));
        }
        return List.copyOf(judged);
    }
}
