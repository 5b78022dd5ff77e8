// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.compare.draft.Choice;
import org.loomwright.compare.draft.JumperDraft;
import org.loomwright.condition.Condition;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitJudge;
import org.loomwright.fit.FitProblem;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.plan.Conflict;
import org.loomwright.fit.plan.FewestHarnesses;
import org.loomwright.fit.plan.HarnessPlan;
import org.loomwright.fit.plan.HarnessPlanner;
import org.loomwright.fit.plan.Jumpers;
import org.loomwright.fit.plan.Kept;
import org.loomwright.fit.plan.PlanModel;
import org.loomwright.fit.plan.PlanText;
import org.loomwright.fit.plan.Savings;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Run;
import org.loomwright.harness.Source;
import org.loomwright.harness.TextEdit;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.lang.Formatter;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Progress;

/**
 * Plans stations and lengths of harnesses, and lets the judge, which shares no code with the planner, look at each plan
 * as it would be written down. Writes nothing.
 */
public final class PlanHarness {

    private static final int MOST_GEOMETRIES = 10_000;

    private final SourceReader reader;
    private final HarnessPlanner planner;
    private final FitJudge judge;
    private final FitDefaults defaults;

    public PlanHarness(SourceReader reader, HarnessPlanner planner, FitJudge judge, FitDefaults defaults) {
        this.reader = reader;
        this.planner = planner;
        this.judge = judge;
        this.defaults = defaults;
    }

    /**
     * A harness with its plan, or with why there is none.
     *
     * @param model   what was planned
     * @param plan    the plan
     * @param text    the file of the harness with the plan in it; empty without a plan
     * @param before  what the judge says of the harness as it stands in the source
     * @param judged  what the judge says of that text; empty without a plan
     * @param refusal why there is none; empty with a plan, and when none was found in time
     * @param taken   what it took over from its drawings, and what of them was left to the engineer
     */
    public record Planned(PlanModel model, HarnessPlan plan, Optional<Source> text, FitReport before,
            Optional<FitReport> judged, Optional<Refusal> refusal, List<Choice> taken) {

        public Planned {
            taken = List.copyOf(taken);
        }

        /** The same with what was taken over before it was planned. */
        public Planned taking(List<Choice> choices) {
            return new Planned(model, plan, text, before, judged, refusal, choices);
        }

        /** The harness as it stands in the source. */
        public WiringView harness() {
            return model.harness();
        }

        /** True when the plan answers for all that the drawings ask. */
        public boolean isWhole() {
            return judged.filter(report -> report.verdict() == FitReport.Verdict.FITS).isPresent()
                    && model.open().isEmpty();
        }
    }

    /**
     * Why one harness does not serve all drawings.
     *
     * @param drawings the covered drawings that have a vehicle, in order
     * @param conflict what cannot be served by one, so little that without any of it a harness fits
     * @param fewest   the fewest harnesses instead, by index of {@code drawings}
     * @param jumpers  one harness with the fewest jumpers instead; empty when jumpers do not help
     * @param texts    that harness with its stations and lengths, then each jumper in a file of its own
     */
    public record Refusal(List<String> drawings, Conflict conflict, FewestHarnesses.Answer fewest,
            Optional<Jumpers.Answer> jumpers, List<Source> texts) {

        public Refusal {
            drawings = List.copyOf(drawings);
            texts = List.copyOf(texts);
        }
    }

    /** Whether a source leaves a station or a length of a harness open. */
    public static boolean isOpen(WiringView harness) {
        return harness.wiring().runs().stream().anyMatch(run -> run.breakouts().stream().map(Run.Breakout::at)
                .anyMatch(at -> at.value().isEmpty()) || run.kind() == Run.Kind.BRANCH
                && run.length().flatMap(Measure::value).isEmpty());
    }

    /**
     * Plans one harness of a project.
     *
     * @throws BadCall when it covers more than 10,000 different vehicle geometries
     */
    public Planned plan(WiringView harness, Project project, Cancel cancel, Progress progress) throws BadCall {
        return plan(harness, bounded(PlanModel.of(harness, project, defaults), project), project, cancel, progress);
    }

    /**
     * Plans one harness again; of the stations and lengths that it has, only those change that must.
     *
     * @throws BadCall when it covers more than 10,000 different vehicle geometries
     */
    public Planned planAgain(WiringView harness, Project project, Cancel cancel, Progress progress) throws BadCall {
        List<PlanModel.Open> open = bounded(PlanModel.of(harness, project, defaults), project).open();
        Kept kept = Kept.of(harness, project, defaults, planner, cancel);
        PlanModel model = PlanModel.of(kept.harness(), project, defaults);
        return plan(harness, new PlanModel(harness, model.problem(), model.asked(), open, model.fixed()),
                project, cancel, progress);
    }

    /**
     * Plans one harness with all that its drawings connect and it does not, which it takes over first.
     *
     * @param keep whether of the stations and lengths that it has only those change that must
     * @throws BadCall when it covers more than 10,000 different vehicle geometries
     */
    public Planned planTaking(WiringView harness, Project project, boolean keep, Cancel cancel, Progress progress)
            throws BadCall {
        progress.report(harness.name() + ": what its drawings connect", 0, 0);
        TakeOverDrawings.Taken taken = new TakeOverDrawings(reader).into(harness, project, cancel);
        return (keep ? planAgain(taken.harness(), taken.project(), cancel, progress)
                : plan(taken.harness(), taken.project(), cancel, progress)).taking(taken.choices());
    }

    /** A harness for so many kinds of vehicle is no harness any more, and planning it would take hours. */
    private static PlanModel bounded(PlanModel model, Project project) throws BadCall {
        if (model.problem().vehicles() > MOST_GEOMETRIES) {
            throw new BadCall("harness " + model.harness().name() + " covers " + model.problem().vehicles()
                    + " different vehicle geometries, more than " + MOST_GEOMETRIES + "; cover fewer drawings");
        }
        Set<String> files = new HashSet<>(Set.of(model.harness().wiring().span().file()));
        model.harness().covers().forEach(name -> project.wiring(name)
                .ifPresent(drawing -> files.add(drawing.wiring().span().file())));
        List<PlanModel.Open> open = new ArrayList<>(model.open());
        project.problems().stream().filter(each -> files.contains(each.span().file())).forEach(each -> open.add(
                new PlanModel.Open("", each.span().at(), each.message(), each.span())));
        return new PlanModel(model.harness(), model.problem(), model.asked(), open, model.fixed());
    }

    private Planned plan(WiringView harness, PlanModel model, Project project, Cancel cancel, Progress progress) {
        progress.report(harness.name() + ": laying it as it is", 0, 0);
        FitReport before = judge.judge(FitProblem.of(harness, project, defaults), cancel);
        HarnessPlan plan = planner.plan(model.problem(), cancel, (what, done, total) -> progress.report(harness.name()
                + ": " + what, done, total));
        progress.report(harness.name() + ": laying it as planned", 0, 0);
        if (plan.found().isEmpty()) {
            return new Planned(model, plan, Optional.empty(), before, Optional.empty(), plan.isImpossible()
                    ? Optional.of(refusal(model, project, cancel, progress)) : Optional.empty(), List.of());
        }
        Source written = written(harness, project, plan.found().get());
        String file = written.file();
        List<Source> sources = new ArrayList<>(project.sources());
        sources.replaceAll(source -> source.file().equals(file) ? written : source);
        Project planned = Project.link(sources);
        FitReport report = judge.judge(FitProblem.of(planned.wiring(harness.name()).orElseThrow(), planned, defaults),
                cancel);
        if (report.verdict() == FitReport.Verdict.DOES_NOT_FIT && model.open().isEmpty()) {
            throw new IllegalStateException("the judge refuses the plan of " + harness.name() + ": " + report.words());
        }
        return new Planned(model, plan, Optional.of(written), before, Optional.of(report), Optional.empty(),
                List.of());
    }

    /** What drives a plan: what each drawing costs, and what more excess would save. */
    public WhatIf whatIf(Planned planned, Cancel cancel) {
        Map<String, BitSet> drawings = drawings(planned.model());
        return new WhatIf(planned, List.copyOf(drawings.keySet()), Savings.of(planned.model().problem(),
                planned.plan().found().orElseThrow(), List.copyOf(drawings.values()), planner, cancel));
    }

    /**
     * What would be saved.
     *
     * @param planned  the plan
     * @param drawings its drawings
     * @param savings  what it would be without each of them, in their order
     */
    public record WhatIf(Planned planned, List<String> drawings, Savings.Answer savings) {
    }

    private static Map<String, BitSet> drawings(PlanModel model) {
        Map<String, BitSet> drawings = new LinkedHashMap<>();
        for (int v = 0; v < model.asked().columns().size(); v++) {
            drawings.computeIfAbsent(model.asked().columns().get(v).drawing(), key -> new BitSet()).set(v);
        }
        return drawings;
    }

    private Source written(WiringView harness, Project project, HarnessPlan.Solution plan) {
        String file = harness.wiring().span().file();
        List<TextEdit> edits = PlanText.edits(harness.wiring(), plan);
        return reader.read(file, TextEdit.apply(project.text(file).orElseThrow(), edits)
                .getBytes(StandardCharsets.UTF_8));
    }

    private Refusal refusal(PlanModel model, Project project, Cancel cancel, Progress progress) {
        Map<String, BitSet> drawings = drawings(model);
        String name = model.harness().name();
        progress.report(name + ": the fewest jumpers", 0, 0);
        Optional<Jumpers.Answer> jumpers = Jumpers.of(model.problem(), planner, cancel);
        progress.report(name + ": why no harness serves all", 0, 0);
        Conflict conflict = Conflict.within(model.problem(), planner, cancel);
        FewestHarnesses.Answer fewest = FewestHarnesses.of(model.problem(), List.copyOf(drawings.values()), planner,
                cancel, (what, done, total) -> progress.report(name + ": " + what, done, total));
        return new Refusal(List.copyOf(drawings.keySet()), conflict, fewest, jumpers,
                jumpers.map(answer -> texts(model, project, answer)).orElse(List.of()));
    }

    /** The harness that goes with jumpers, and one lead for each branch that needs some, as long as the longest. */
    private List<Source> texts(PlanModel model, Project project, Jumpers.Answer answer) {
        WiringView harness = model.harness();
        List<Source> texts = new ArrayList<>(List.of(written(harness, project, answer.plan())));
        Map<String, List<Jumpers.Jumper>> byBranch = new LinkedHashMap<>();
        answer.jumpers().forEach(each -> byBranch.computeIfAbsent(each.branch(), key -> new ArrayList<>()).add(each));
        byBranch.forEach((branch, all) -> {
            Condition vehicles = harness.platform().vehicles().anyOf(all.stream()
                    .map(each -> model.asked().columns().get(each.vehicle()).vehicles()).toList());
            Length length = new Length(all.stream().mapToLong(Jumpers.Jumper::length).max().orElseThrow());
            String name = harness.name() + "_" + branch;
            while (project.wiring(name).isPresent()) {
                name += "_jumper";
            }
            JumperDraft draft = JumperDraft.of(name, harness, harness.run(branch).orElseThrow(), vehicles, length);
            texts.add(reader.read(name + ".loom", Formatter.format(draft.text()).getBytes(StandardCharsets.UTF_8)));
        });
        return texts;
    }
}
