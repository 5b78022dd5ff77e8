// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.loomwright.app.DraftHarness.Drafted;
import org.loomwright.app.PlanHarness.Planned;
import org.loomwright.app.PlanHarness.WhatIf;
import org.loomwright.compare.draft.Choice;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitRow;
import org.loomwright.fit.FitStatus;
import org.loomwright.fit.plan.HarnessPlan;
import org.loomwright.fit.plan.PlanModel;
import org.loomwright.quantity.Length;

/**
 * Plans as one page of HTML without scripts and without anything from elsewhere, for screen and paper: what was found,
 * the fit before and as planned, and which vehicles take what. What does not fit is marked by words, and by weight and
 * colour besides.
 */
public final class PlanPage {

    private static final String CAUTION = "A plan rests on the drawings as they were transcribed. That the way of a"
            + " branch is free, and that the vehicle on the ramp is the one on the sheet, no plan knows. Before"
            + " anything is built or fitted, somebody who knows the vehicle looks at it; local codes, the vehicle's"
            + " maker and whoever is licensed to do the work have the last word. Disconnect the battery before you"
            + " touch a harness.";

    private final StringBuilder out = new StringBuilder();

    private PlanPage() {
    }

    /** The text of the page. */
    public static String of(String project, List<Planned> all, List<Drafted> drafts) {
        return of(project, all, drafts, List.of());
    }

    /** The same with what drives some of the plans. */
    public static String of(String project, List<Planned> all, List<Drafted> drafts, List<WhatIf> whatIfs) {
        PlanPage page = new PlanPage();
        String title = escaped(project) + ": planned harnesses";
        page.out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<title>").append(title)
                .append("</title>\n<meta name=\"viewport\" content=\"width=device-width\"/>\n<style>\n")
                .append(PageStyle.OF_COMPARISON)
                .append("td.bad { color: var(--mark); font-weight: 600; }\ntd.tight { font-weight: 600; }\n")
                .append("</style>\n</head>\n<body>\n<main>\n<h1>").append(title)
                .append("</h1>\n<p class=\"caution\"><strong>Caution.</strong> ").append(CAUTION).append("</p>\n");
        for (Planned each : all) {
            page.harness(each);
            drafts.stream().filter(draft -> draft.planned() == each).forEach(draft -> page.choices("What it takes over,"
                    + " where its drawings differ", draft.draft().choices()));
            if (!each.taken().isEmpty()) {
                page.choices("What it lacks of its drawings", each.taken());
            }
            whatIfs.stream().filter(whatIf -> whatIf.planned() == each).forEach(page::whatIf);
        }
        return page.out.append("</main>\n</body>\n</html>\n").toString();
    }

    private static String escaped(String text) {
        return MatrixPage.escaped(text);
    }

    private void harness(Planned planned) {
        String name = planned.harness().name();
        out.append("<h2>").append(escaped(name)).append("</h2>\n<p class=\"verdict\">").append(verdict(planned))
                .append("</p>\n");
        planned.plan().found().ifPresent(plan -> found(planned, plan));
        if (planned.refusal().isPresent()) {
            refused(planned);
        }
        chart(planned);
        matrix("Fit before: margin in mm, and what has to be dressed back", planned.before());
        planned.judged().ifPresent(after -> matrix("Fit as planned: margin in mm, and what has to be dressed back",
                after));
        if (!planned.model().open().isEmpty()) {
            head("Not answered for", List.of("branch", "drawing", "why"));
            for (PlanModel.Open each : planned.model().open()) {
                row(each.branch(), each.drawing(), each.words());
            }
            foot();
        }
    }

    private static String verdict(Planned planned) {
        if (planned.refusal().isPresent()) {
            return "No harness serves all its drawings.";
        }
        return planned.plan().found().isEmpty() ? "No harness was found; whether there is none was not found out."
                : planned.isWhole() ? "Planned." : "Planned as far as the drawings go.";
    }

    private void found(Planned planned, HarnessPlan.Solution plan) {
        head("What was found", List.of("objective", "value", "proof"));
        String order = planned.model().problem().order().stream().map(each -> each.name().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(", "));
        row("order", order, plan.isBest() ? "each proved the least under those before it" : "the best that was found");
        row("excess", Millimetres.excess(new Length(plan.excess())) + " mm at most", plan.excess() > plan.bounds()
                .excess() ? "no harness has less than " + Millimetres.excess(new Length(Math.max(0, plan.bounds()
                        .excess()))) + " mm" : "proved the least");
        row("copper", PlanPages.grams(plan.copper()) + " g", "conductor and covering, every wire of every vehicle; "
                + PlanPages.copperGap(plan).orElse("proved the least"));
        row("length", Millimetres.exact(new Length(plan.length())) + " mm", "branches over all vehicles; "
                + PlanPages.lengthGap(plan).orElse("proved the least"));
        foot();
        head("Stations and lengths, mm", List.of("", "before", "planned", "bound by"));
        for (PlanPages.Line each : PlanPages.lines(planned)) {
            row(each.kind() + " " + each.name(), each.before().map(Millimetres::exact).orElse("-"),
                    each.pinned() ? "pinned" : Millimetres.exact(each.planned()), each.binds());
        }
        foot();
    }

    /** The words of the terminal: what stands farther in is a list below what stands before it. */
    private void refused(Planned planned) {
        StringBuilder words = new StringBuilder();
        RefusalText.reasons(planned, words);
        boolean list = false;
        for (String line : words.toString().lines().toList()) {
            boolean item = line.startsWith("    ");
            if (item != list) {
                out.append(item ? "<ul>\n" : "</ul>\n");
                list = item;
            }
            out.append(item ? "<li>" : "<p>").append(escaped(line.strip())).append(item ? "</li>\n" : "</p>\n");
        }
        out.append(list ? "</ul>\n" : "");
    }

    /** Which vehicles take what. */
    private void chart(Planned planned) {
        head("Which vehicles take what", List.of("drawing", "vehicles", "takes"));
        PlanChart.lines(planned).forEach(each -> row(each.drawing(), each.vehicles(), each.takes()));
        foot();
    }

    private void matrix(String title, FitReport report) {
        if (report.problem().columns().isEmpty()) {
            return;
        }
        List<String> heads = new ArrayList<>(List.of("place (branch)"));
        report.problem().columns().forEach(column -> heads.add(column.label()));
        head(title, heads);
        Map<Integer, Map<Integer, FitCell>> cells = new TreeMap<>();
        report.cells().forEach(cell -> cells.computeIfAbsent(cell.row(), key -> new TreeMap<>())
                .put(cell.column(), cell));
        for (int r = 0; r < report.problem().rows().size(); r++) {
            FitRow row = report.problem().rows().get(r);
            out.append("<tr><th scope=\"row\">").append(escaped(row.branch().isEmpty() ? row.place()
                    : row.place() + " (" + row.branch() + ")")).append("</th>");
            for (int c = 0; c < report.problem().columns().size(); c++) {
                FitCell cell = cells.getOrDefault(r, Map.of()).get(c);
                out.append(cell != null && cell.status().isFailure() ? "<td class=\"bad\">" : "<td>")
                        .append(cell == null ? "" : escaped(words(cell))).append("</td>");
            }
            out.append("</tr>\n");
        }
        foot();
    }

    private static String words(FitCell cell) {
        String figures = cell.figures().map(each -> Millimetres.margin(each.margin()) + " (" + Millimetres.excess(
                each.excess()) + ")").orElse("");
        return cell.status() == FitStatus.FITS ? figures : figures.isEmpty() ? cell.status().words()
                : figures + " " + cell.status().words();
    }

    private void choices(String title, List<Choice> choices) {
        head(title, List.of("about", "element", "choice"));
        for (Choice each : choices) {
            row(each.kind().words(), each.element(), each.words());
        }
        foot();
    }

    private void whatIf(WhatIf whatIf) {
        head("What drives it, planned anew each time", List.of("", "excess, mm", "copper, g"));
        WhatIfText.lines(whatIf).forEach(each -> row(each.name(), each.excess(), each.copper()));
        foot();
        WhatIfText.sentences(whatIf).forEach(each -> out.append("<p>").append(escaped(each)).append("</p>\n"));
    }

    private void head(String caption, List<String> columns) {
        out.append("<div class=\"wide\"><table><caption>").append(escaped(caption)).append("</caption><thead><tr>");
        columns.forEach(each -> out.append("<th scope=\"col\">").append(escaped(each)).append("</th>"));
        out.append("</tr></thead><tbody>\n");
    }

    private void row(String first, String... rest) {
        out.append("<tr><th scope=\"row\">").append(escaped(first)).append("</th>");
        for (String each : rest) {
            out.append("<td>").append(escaped(each)).append("</td>");
        }
        out.append("</tr>\n");
    }

    private void foot() {
        out.append("</tbody></table></div>\n");
    }
}
