// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.loomwright.app.DraftHarness.Drafted;
import org.loomwright.app.JudgeFit;
import org.loomwright.app.PlanHarness.Planned;
import org.loomwright.app.PlanHarness.WhatIf;
import org.loomwright.fit.FitBinding;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.plan.HarnessPlan;
import org.loomwright.fit.plan.PlanModel;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.harness.Run;
import org.loomwright.quantity.Length;

/** Plans for people and for machines. */
public final class PlanPages {

    private static final double NM_PER_M = 1e9;
    private static final double MG_PER_G = 1e3;
    private static final int MOST_OPEN = 12;

    private PlanPages() {
    }

    /** A station or length: its name, what the source says, what is planned, and the drawing that binds it. */
    record Line(String kind, String name, Optional<Length> before, Length planned, boolean pinned,
            String binds) {
    }

    /** What was planned, harness by harness. */
    public static String text(List<Planned> all, Palette palette, int width) {
        StringBuilder out = new StringBuilder();
        for (Planned each : all) {
            out.append(out.isEmpty() ? "" : "\n");
            text(each, palette, width, out);
        }
        return out.toString();
    }

    private static void text(Planned planned, Palette palette, int width, StringBuilder out) {
        String name = Cells.printable(planned.harness().name());
        if (planned.refusal().isPresent()) {
            out.append(palette.paint(Palette.Tone.ERROR, name + ": no harness serves all its drawings")).append('\n');
            RefusalText.reasons(planned, out);
            PlanChart.append(planned, "  ", out);
            DraftText.append(planned, out);
            matrix("fit before", planned, planned.before(), palette, width, out);
            return;
        }
        if (planned.plan().found().isEmpty()) {
            out.append(palette.paint(Palette.Tone.WARNING, name + ": no harness was found"))
                    .append("; whether there is none was not found out\n")
                    .append("  give the search more time, or allow more with excessAtMost or doublingBackAtMost\n");
            return;
        }
        HarnessPlan.Solution plan = planned.plan().found().orElseThrow();
        long drawings = planned.model().asked().columns().stream().map(each -> each.drawing()).distinct().count();
        out.append(palette.paint(planned.isWhole() ? Palette.Tone.GOOD : Palette.Tone.WARNING, name
                + (planned.isWhole() ? " planned" : " planned as far as the drawings go") + ": " + drawings
                + (drawings == 1 ? " drawing, " : " drawings, ") + planned.model().problem().vehicles()
                + (planned.model().problem().vehicles() == 1 ? " vehicle geometry" : " vehicle geometries")))
                .append('\n');
        out.append("  objectives  ").append(planned.model().problem().order().stream()
                .map(each -> each.name().toLowerCase(Locale.ROOT)).collect(Collectors.joining(", ")))
                .append(plan.isBest() ? "; each proved the least under those before it\n"
                        : "; the best that was found\n");
        out.append("  excess      ").append(Millimetres.excess(new Length(plan.excess()))).append(" mm at most")
                .append(plan.excess() > plan.bounds().excess() ? "; no harness has less than "
                        + Millimetres.excess(new Length(Math.max(0, plan.bounds().excess()))) + " mm" : "")
                .append('\n');
        out.append("  copper      ").append(grams(plan.copper()))
                .append(" g of conductor and covering, every wire of every vehicle").append(gap(copperGap(plan)))
                .append('\n');
        lengthGap(plan).ifPresent(gap -> out.append("  length      ").append(Millimetres.exact(new Length(plan
                .length()))).append(" mm of branches over all vehicles; ").append(gap).append('\n'));
        out.append('\n');
        List<Line> lines = lines(planned);
        List<String> heads = new ArrayList<>(List.of("mm"));
        List<TextTable.Cell> before = new ArrayList<>();
        List<TextTable.Cell> now = new ArrayList<>();
        List<TextTable.Cell> binds = new ArrayList<>();
        for (Line line : lines) {
            heads.add(line.kind() + " " + Cells.printable(line.name()));
            before.add(TextTable.Cell.word(line.before().map(Millimetres::exact).orElse("-")));
            now.add(TextTable.Cell.word(line.pinned() ? "pinned" : line.before().filter(line.planned()::equals)
                    .isPresent() ? "=" : Millimetres.exact(line.planned())));
            binds.add(TextTable.Cell.word(line.binds()));
        }
        new TextTable(heads, List.of(new TextTable.Column("before", before), new TextTable.Column("planned", now),
                new TextTable.Column("bound by", binds)), palette).append(width, out);
        open(planned, out);
        DraftText.append(planned, out);
        out.append('\n');
        PlanChart.append(planned, "", out);
        matrix("fit before", planned, planned.before(), palette, width, out);
        planned.judged().ifPresent(after -> matrix("fit as planned", planned, after, palette, width, out));
    }

    /** The fit as a table; nothing where no length is known yet. */
    private static void matrix(String title, Planned planned, FitReport report, Palette palette, int width,
            StringBuilder out) {
        if (report.cells().stream().anyMatch(cell -> cell.figures().isPresent())) {
            out.append('\n').append(title).append('\n').append(FitMatrix.of(new JudgeFit.Judged(planned.harness(),
                    Map.of(), report), palette, width));
        }
    }

    static long grams(long copper) {
        return Math.round(copper / NM_PER_M / MG_PER_G);
    }

    private static String gap(Optional<String> words) {
        return words.map(each -> "; " + each).orElse("");
    }

    /** What copper may fall short of, in words; empty where it is proved the least. */
    static Optional<String> copperGap(HarnessPlan.Solution plan) {
        return gap(plan.copper(), plan.bounds().copper(), Objective.COPPER, grams(plan.bounds().copper()) + " g");
    }

    /** The same of the sum of branch lengths. */
    static Optional<String> lengthGap(HarnessPlan.Solution plan) {
        return gap(plan.length(), plan.bounds().length(), Objective.LENGTH,
                Millimetres.exact(new Length(Math.max(0, plan.bounds().length()))) + " mm");
    }

    private static Optional<String> gap(long value, long bound, Objective sum, String least) {
        if (bound == Long.MIN_VALUE) {
            return Optional.of("not proved the least");
        }
        return value == bound ? Optional.empty() : Optional.of((sum == Objective.LENGTH ? "with what counts more as it"
                + " is" : "with this excess") + " none has less than " + least);
    }

    private static void open(Planned planned, StringBuilder out) {
        List<PlanModel.Open> open = planned.model().open();
        if (!open.isEmpty()) {
            out.append("\nnot answered for:\n");
            open.stream().limit(MOST_OPEN).forEach(each -> out.append("  ").append(String.join(" in ",
                    Stream.of(each.branch(), each.drawing()).filter(word -> !word.isEmpty()).toList()))
                    .append(": ").append(each.words()).append('\n'));
            if (open.size() > MOST_OPEN) {
                out.append("  and ").append(open.size() - MOST_OPEN).append(" more\n");
            }
        }
    }

    static List<Line> lines(Planned planned) {
        HarnessPlan.Solution plan = planned.plan().found().orElseThrow();
        List<Line> lines = new ArrayList<>();
        for (Run run : planned.harness().wiring().runs()) {
            for (Run.Breakout each : run.breakouts()) {
                line(planned, "station", FitBinding.Kind.BREAKOUT, each.name().text(), plan.stations().get(each.name()
                        .text()), each.after().isEmpty() ? Optional.of(each.at()) : Optional.empty(),
                        each.at().pinned(), lines);
            }
        }
        for (Run run : planned.harness().wiring().runs(Run.Kind.BRANCH)) {
            line(planned, "branch", FitBinding.Kind.BRANCH, run.name().text(), plan.lengths().get(run.name().text()),
                    run.length(), run.length().filter(Measure::pinned).isPresent(), lines);
        }
        return lines;
    }

    private static void line(Planned planned, String kind, FitBinding.Kind sort, String name, Long nanometres,
            Optional<Measure> before, boolean pinned, List<Line> lines) {
        if (nanometres != null) {
            lines.add(new Line(kind, name, before.flatMap(Measure::length), new Length(nanometres),
                    pinned && planned.model().fixed().containsKey(name),
                    binds(planned.judged().orElseThrow(), sort, name)));
        }
    }

    private static String binds(FitReport report, FitBinding.Kind kind, String name) {
        return report.bindings().stream().filter(each -> each.kind() == kind && each.name().equals(name)).findFirst()
                .map(each -> report.problem().columns().get(each.column()).drawing()).orElse("");
    }

    /** The same as JSON; {@code docs/cli-json.md} describes it. */
    public static String json(List<Planned> all) {
        return json(all, List.of(), List.of());
    }

    /** The same with the drafts that some of them are plans of, and with what drives some of them. */
    public static String json(List<Planned> all, List<Drafted> drafts, List<WhatIf> whatIfs) {
        return Json.object(json -> {
            json.name("schema").value(CheckJson.SCHEMA);
            json.name("command").value("plan");
            json.name("harnesses").beginArray();
            for (Planned each : all) {
                json.beginObject();
                json.name("harness").value(each.harness().name());
                if (each.refusal().isPresent()) {
                    RefusalText.json(each, json);
                } else if (each.plan().found().isEmpty()) {
                    json.name("notFoundInTime").value(true);
                } else {
                    solution(each, json);
                }
                PlanChart.json(each, json);
                boolean drafted = drafts.stream().anyMatch(draft -> draft.planned() == each);
                if (!drafted) {
                    DraftText.json(each.taken(), json);
                }
                for (WhatIf whatIf : whatIfs) {
                    if (whatIf.planned() == each) {
                        WhatIfText.json(whatIf, json);
                    }
                }
                for (Drafted draft : drafts) {
                    if (draft.planned() == each) {
                        DraftText.json(draft, json);
                    }
                }
                json.endObject();
            }
            json.endArray();
        });
    }

    private static void solution(Planned planned, JsonWriter json) throws IOException {
        HarnessPlan.Solution plan = planned.plan().found().orElseThrow();
        json.name("whole").value(planned.isWhole());
        json.name("excessNm").value(plan.excess());
        json.name("copperGrams").value(grams(plan.copper()));
        json.name("best").value(plan.isBest());
        json.name("excessAtLeastNm").value(Math.max(0, plan.bounds().excess()));
        json.name("lengthNm").value(plan.length());
        if (plan.bounds().copper() != Long.MIN_VALUE) {
            json.name("copperAtLeastGrams").value(grams(Math.max(0, plan.bounds().copper())));
        }
        if (plan.bounds().length() != Long.MIN_VALUE) {
            json.name("lengthAtLeastNm").value(Math.max(0, plan.bounds().length()));
        }
        json.name("found").beginArray();
        for (Line line : lines(planned)) {
            json.beginObject();
            json.name("kind").value(line.kind());
            json.name("name").value(line.name());
            json.name("nanometres").value(line.planned().nanometres());
            json.name("pinned").value(line.pinned());
            json.name("boundBy").value(line.binds());
            json.endObject();
        }
        json.endArray();
        json.name("open").beginArray();
        for (PlanModel.Open each : planned.model().open()) {
            json.beginObject();
            json.name("branch").value(each.branch());
            json.name("drawing").value(each.drawing());
            json.name("why").value(each.words());
            json.endObject();
        }
        json.endArray();
    }
}
