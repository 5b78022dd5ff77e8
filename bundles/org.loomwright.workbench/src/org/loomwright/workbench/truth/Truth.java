// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.truth;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.loomwright.app.BadCall;
import org.loomwright.app.JudgeFit;
import org.loomwright.app.JudgeFit.Judged;
import org.loomwright.app.LayMatrix;
import org.loomwright.app.PlanHarness;
import org.loomwright.app.PlanHarness.Planned;
import org.loomwright.compare.matrix.Matrix;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.plan.HarnessPlanner;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Report;
import org.loomwright.workbench.guard.OffUi;

/**
 * What is known of a project at one moment: its files joined, and what was found in them. What takes longer and is not
 * always wanted is worked out when first asked for, and kept. Safe for use by several threads; the questions that work
 * something out throw on a thread that draws windows.
 */
public final class Truth {

    private final String name;
    private final Project project;
    private final Report report;
    private final Optional<String> failure;
    /** A plan that is not found by then is the best until then. */
    private static final long MOST_PLANNING = 20_000_000_000L;

    private final Object fitLock = new Object();
    private final Object matrixLock = new Object();
    private final Object planLock = new Object();
    private final Map<String, Plan> planned = new HashMap<>();
    private List<Judged> fit;
    private List<Matrix> matrices;

    /**
     * @param name    what the project is called
     * @param project its files
     * @param report  what was found in them
     * @param failure why the last check failed for a reason of ours, if it did; the rest is then of the check before
     */
    public Truth(String name, Project project, Report report, Optional<String> failure) {
        this.name = Objects.requireNonNull(name);
        this.project = Objects.requireNonNull(project);
        this.report = Objects.requireNonNull(report);
        this.failure = Objects.requireNonNull(failure);
    }

    /** Returns what the project is called. */
    public String name() {
        return name;
    }

    /** Returns the files, joined. */
    public Project project() {
        return project;
    }

    /** Returns what was found. */
    public Report report() {
        return report;
    }

    /** Returns why the last check failed; empty when it did not. */
    public Optional<String> failure() {
        return failure;
    }

    /** Returns the same after a check that failed. */
    public Truth failed(String why) {
        return new Truth(name, project, report, Optional.of(why));
    }

    /** Judges the fit of all harnesses, once. */
    public List<Judged> fit(Cancel cancel, Progress progress) {
        OffUi.require("judging the fit");
        synchronized (fitLock) {
            if (fit == null) {
                fit = new JudgeFit(OffUi.judge(new ChainJudge()), FitDefaults.usual()).judge(project, cancel, progress);
            }
            return fit;
        }
    }

    /**
     * What came of planning a harness.
     *
     * @param planned the plan; empty when it could not be planned
     * @param judged  how it fits as planned; empty when no harness was found
     * @param trouble why it could not be planned; empty when it could
     */
    public record Plan(Optional<Planned> planned, Optional<Judged> judged, String trouble) {
    }

    /**
     * Plans a harness anew as the command {@code plan} does, with all that its drawings connect, and judges what was
     * found, once.
     *
     * @param harness its name
     * @param reader  reads the planned source
     */
    public Plan planned(String harness, SourceReader reader, Cancel cancel, Progress progress) {
        OffUi.require("planning a harness");
        synchronized (planLock) {
            Plan known = planned.get(harness);
            if (known == null) {
                known = fit(cancel, progress).stream().filter(each -> each.harness().name().equals(harness)).findFirst()
                        .map(each -> planned(each, reader, cancel, progress))
                        .orElseGet(() -> new Plan(Optional.empty(), Optional.empty(), "there is no harness "
                                + harness));
                planned.put(harness, known);
            }
            return known;
        }
    }

    private Plan planned(Judged now, SourceReader reader, Cancel cancel, Progress progress) {
        long end = System.nanoTime() + MOST_PLANNING;
        try {
            Planned plan = new PlanHarness(reader, new HarnessPlanner(() -> System.nanoTime() - end >= 0), OffUi.judge(
                    new ChainJudge()), FitDefaults.usual()).planTaking(now.harness(), project, false, cancel, progress);
            return new Plan(Optional.of(plan), plan.judged().map(report -> new Judged(now.harness(), now.titles(),
                    report)), "");
        } catch (BadCall none) {
            return new Plan(Optional.empty(), Optional.empty(), none.getMessage());
        }
    }

    /** Lays drawings that fill one position side by side, once; none when no two do. */
    public List<Matrix> matrices(Cancel cancel) {
        OffUi.require("laying drawings side by side");
        synchronized (matrixLock) {
            if (matrices == null) {
                try {
                    matrices = LayMatrix.all(project, cancel);
                } catch (BadCall none) {
                    matrices = List.of();
                }
            }
            return matrices;
        }
    }
}
