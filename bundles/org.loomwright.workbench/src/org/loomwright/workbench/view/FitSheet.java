// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.app.JudgeFit.Judged;
import org.loomwright.app.VehicleWords;
import org.loomwright.app.print.PlanNotes;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitColumn;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitRow;
import org.loomwright.fit.FitStatus;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Length;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.preference.Preferences;
import org.loomwright.workbench.text.Figures;
import org.loomwright.workbench.truth.Truth.Plan;

/**
 * The fit of one harness as a table for the chosen vehicles.
 *
 * @param harnesses the harnesses that can be shown
 * @param harness   the one that is shown; empty for none
 * @param heads     headings of the columns, after that of the places
 * @param tips      for each column its vehicles in words
 * @param lines     a line for each place
 * @param notes     of a plan, which vehicles take what, why not one harness, and what it takes over
 * @param words     the verdict
 */
public record FitSheet(List<String> harnesses, String harness, List<String> heads, List<String> tips, List<Line> lines,
        List<Note> notes, String words) {

    public FitSheet {
        harnesses = List.copyOf(harnesses);
        heads = List.copyOf(heads);
        tips = List.copyOf(tips);
        lines = List.copyOf(lines);
        notes = List.copyOf(notes);
    }

    /** A place, the branch that serves it, and what came of it in each column. */
    public record Line(String place, Span span, List<Box> boxes) {

        public Line {
            boxes = List.copyOf(boxes);
        }
    }

    /**
     * What came of one place in the vehicles of one column.
     *
     * @param text   the margin in mm, or the word for what came of it; never a colour alone
     * @param status what came of it; empty where there is nothing
     * @param span   the line that decides; the branch of the harness
     * @param detail how the figure came about
     */
    public record Box(String text, Optional<FitStatus> status, Optional<Span> span, String detail) {
    }

    /** What is to be said of a plan, and the drawing that it is about. */
    public record Note(PlanNotes.Note said, Optional<Span> span) {
    }

    private static final Box NOTHING = new Box("-", Optional.empty(), Optional.empty(), "Nothing is asked here.");

    /** Stands behind the name of a harness whose fit is shown as it would be planned. */
    static final String AS_PLANNED = ", as planned";

    /** Lays out a harness as it was planned. A cell leads to the branch as it stands in the source. */
    static FitSheet planned(List<Judged> all, String harness, Plan plan, Choice choice, Project project) {
        FitSheet now = of(all, harness, choice, project);
        List<Note> notes = plan.planned().map(PlanNotes::of).orElse(List.of()).stream().map(each -> new Note(each,
                project.wiring(each.head()).map(drawing -> drawing.wiring().span()))).toList();
        if (plan.judged().isEmpty()) {
            return new FitSheet(now.harnesses, harness + AS_PLANNED, List.of(), List.of(), List.of(), notes,
                    withoutPlan(harness, plan));
        }
        FitSheet then = of(List.of(plan.judged().get()), harness, choice, project);
        Span whole = plan.judged().get().harness().wiring().span();
        List<Line> lines = new ArrayList<>();
        for (Line line : then.lines) {
            // what was taken over is not in the source yet
            Span span = now.lines.stream().filter(each -> each.place.equals(line.place)).findFirst().map(Line::span)
                    .orElse(whole);
            lines.add(new Line(line.place, span, line.boxes.stream().map(box -> new Box(box.text, box.status,
                    box.span.map(each -> span), box.detail)).toList()));
        }
        return new FitSheet(now.harnesses, harness + AS_PLANNED, then.heads, then.tips, lines, notes, "As planned, not"
                + " as it stands in the source: " + then.words);
    }

    private static String withoutPlan(String harness, Plan plan) {
        if (plan.planned().isEmpty()) {
            return "Not planned: " + plan.trouble() + ".";
        }
        return plan.planned().get().refusal().isPresent()
                ? "No harness serves all drawings of " + harness + ". Why, and what does, is listed here."
                : "No harness was found for " + harness + " in time; whether there is none was not found out.";
    }

    /** Lays out one of the judged harnesses: the one of that name, else the first that covers a drawing. */
    static FitSheet of(List<Judged> all, String wanted, Choice choice, Project project) {
        List<Judged> shown = all.stream().filter(each -> !each.coversNothing()).toList();
        List<String> names = shown.stream().map(each -> each.harness().name())
                .flatMap(each -> Stream.of(each, each + AS_PLANNED)).toList();
        Optional<Judged> judged = shown.stream().filter(each -> each.harness().name().equals(wanted)).findFirst()
                .or(() -> shown.stream().findFirst());
        if (judged.isEmpty()) {
            return new FitSheet(names, "", List.of(), List.of(), List.of(), List.of(),
                    "No harness of this project covers a drawing, so there is nothing that must fit.");
        }
        FitReport report = judged.get().report();
        List<Integer> columns = new ArrayList<>();
        for (int i = 0; i < report.problem().columns().size(); i++) {
            if (choice.touches(report.problem().columns().get(i).vehicles(), project)) {
                columns.add(i);
            }
        }
        List<Line> lines = new ArrayList<>();
        for (int row = 0; row < report.problem().rows().size(); row++) {
            lines.add(line(report, row, columns));
        }
        List<String> heads = new ArrayList<>(columns.stream()
                .map(each -> report.problem().columns().get(each).label()).toList());
        heads.addFirst("least");
        List<String> tips = new ArrayList<>(columns.stream().map(each -> tip(judged.get(), each)).toList());
        tips.addFirst("the least margin of the shown vehicles");
        return new FitSheet(names, judged.get().harness().name(), heads, tips, lines, List.of(),
                judged.get().harness().name() + " " + report.words() + ". Shown for " + choice.words()
                + ", margin in " + Preferences.unit().symbol() + ".");
    }

    private static String tip(Judged judged, int column) {
        FitColumn found = judged.report().problem().columns().get(column);
        return judged.titles().getOrDefault(found.drawing(), found.drawing()) + ": "
                + VehicleWords.of(found.vehicles());
    }

    private static Line line(FitReport report, int row, List<Integer> columns) {
        FitRow place = report.problem().rows().get(row);
        List<Box> boxes = new ArrayList<>();
        List<FitCell> cells = new ArrayList<>();
        for (int column : columns) {
            Optional<FitCell> cell = report.cell(row, column);
            cell.ifPresent(cells::add);
            boxes.add(cell.map(each -> box(report, each)).orElse(NOTHING));
        }
        boxes.addFirst(cells.stream().filter(each -> each.figures().isPresent())
                .min(Comparator.comparing(each -> each.figures().orElseThrow().margin()))
                .map(each -> box(report, each)).orElse(new Box("", Optional.empty(), Optional.empty(), "")));
        return new Line(place.branch().isEmpty() ? place.place() : place.place() + " (" + place.branch() + ")",
                place.span(), boxes);
    }

    private static Box box(FitReport report, FitCell cell) {
        String margin = cell.figures().map(each -> Figures.down(each.margin())).orElse("");
        String text = cell.status() == FitStatus.FITS ? margin
                : margin.isEmpty() ? cell.status().words() : margin + " " + cell.status().words();
        return new Box(text, Optional.of(cell.status()), cell.harnessSpan().or(cell::factorySpan),
                detail(report, cell));
    }

    private static String detail(FitReport report, FitCell cell) {
        FitColumn column = report.problem().columns().get(cell.column());
        FitRow row = report.problem().rows().get(cell.row());
        String head = cell.place(row) + " in " + column.label() + ": " + cell.status().words();
        String why = cell.reason().map(each -> "; " + each.words()).orElse("");
        return head + why + cell.figures().map(each -> "; made " + mm(each.demand().made()) + " (at least "
                + mm(each.demand().made().minus(each.demand().madeTolerance().minus())) + "), the factory's "
                + mm(each.demand().factory()) + ", plugging in and movement " + mm(each.demand().extra())
                + ", tolerances " + mm(each.demand().reachAllowance()) + ", along the trunk " + mm(each.along())
                + ": margin " + mm(each.margin()) + ", excess " + mm(each.excess())
                + (each.tuck().isZero() ? "" : ", with " + mm(each.tuck()) + " of slack taken up")).orElse("") + ".";
    }

    private static String mm(Length length) {
        return Figures.written(length);
    }
}
