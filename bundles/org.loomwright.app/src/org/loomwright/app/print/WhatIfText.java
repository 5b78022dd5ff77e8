// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.app.PlanHarness.WhatIf;
import org.loomwright.fit.plan.HarnessPlan;
import org.loomwright.fit.plan.Savings;
import org.loomwright.quantity.Length;

/** What drives a plan, for people. */
public final class WhatIfText {

    private static final double NM_PER_M = 1e9;
    private static final double MG_PER_G = 1e3;

    private WhatIfText() {
    }

    /** What dropping each drawing and what allowing more excess would save. */
    public static String text(WhatIf whatIf, Palette palette, int width) {
        StringBuilder out = new StringBuilder("\nwhat drives ")
                .append(Cells.printable(whatIf.planned().harness().name())).append(", planned anew each time\n\n");
        List<String> heads = new ArrayList<>(List.of(""));
        List<TextTable.Cell> excess = new ArrayList<>();
        List<TextTable.Cell> copper = new ArrayList<>();
        for (Line line : lines(whatIf)) {
            heads.add(Cells.printable(line.name()));
            excess.add(TextTable.Cell.word(line.excess()));
            copper.add(TextTable.Cell.word(line.copper()));
        }
        new TextTable(heads, List.of(new TextTable.Column("excess mm", excess),
                new TextTable.Column("copper g", copper)), palette).append(width, out);
        List<String> sentences = sentences(whatIf);
        if (!sentences.isEmpty()) {
            out.append('\n');
            sentences.forEach(each -> out.append(each).append('\n'));
        }
        return out.toString();
    }

    /** A plan beside the one that was made: what was asked of it, its largest excess and its copper. */
    record Line(String name, String excess, String copper) {
    }

    /** The plan, then those without each drawing, with more excess and with the least copper. */
    static List<Line> lines(WhatIf whatIf) {
        List<Line> lines = new ArrayList<>();
        lines.add(line("as planned", whatIf.planned().plan().found()));
        for (int i = 0; i < whatIf.drawings().size(); i++) {
            lines.add(line("without " + whatIf.drawings().get(i), whatIf.savings().without().get(i)));
        }
        for (Savings.Allowed each : whatIf.savings().allowing()) {
            lines.add(line("allowing " + Millimetres.excess(new Length(each.limit())), each.plan()));
        }
        whatIf.savings().leastCopper().ifPresent(least -> lines.add(line("least copper", Optional.of(least))));
        return lines;
    }

    private static Line line(String name, Optional<HarnessPlan.Solution> plan) {
        return new Line(name, plan.map(each -> Millimetres.excess(new Length(each.excess()))).orElse("-"),
                plan.map(each -> Long.toString(grams(each))).orElse("-"));
    }

    /** What allowing more excess saves, a sentence for each step. */
    static List<String> sentences(WhatIf whatIf) {
        HarnessPlan.Solution plan = whatIf.planned().plan().found().orElseThrow();
        return whatIf.savings().allowing().stream().map(each -> words(each, plan)).toList();
    }

    /** What allowing more excess saves, in a sentence. */
    private static String words(Savings.Allowed allowed, HarnessPlan.Solution plan) {
        String more = Millimetres.excess(new Length(allowed.more())) + " mm more to dress back"
                + (allowed.beyond() ? ", which its limits do not allow," : "");
        if (allowed.plan().isEmpty()) {
            return more + ": not found out in time";
        }
        HarnessPlan.Solution found = allowed.plan().get();
        long saved = Math.round((plan.copper() - found.copper()) / NM_PER_M / MG_PER_G);
        return more + (found.copper() >= plan.copper() ? " would save no copper" : saved == 0
                ? " would save less than 1 g of copper" : " would save " + saved + " g of copper")
                + (found.copper() == found.bounds().copper() ? "" : ", perhaps more: it is not proved the most");
    }

    /** The same as JSON. */
    static void json(WhatIf whatIf, JsonWriter json) throws IOException {
        json.name("without").beginArray();
        for (int i = 0; i < whatIf.drawings().size(); i++) {
            json.beginObject();
            json.name("drawing").value(whatIf.drawings().get(i));
            figures(whatIf.savings().without().get(i), json);
            json.endObject();
        }
        json.endArray();
        json.name("allowing").beginArray();
        for (Savings.Allowed each : whatIf.savings().allowing()) {
            json.beginObject();
            json.name("limitNm").value(each.limit());
            json.name("moreNm").value(each.more());
            json.name("beyondLimits").value(each.beyond());
            figures(each.plan(), json);
            json.endObject();
        }
        json.endArray();
        json.name("leastCopper").beginObject();
        figures(whatIf.savings().leastCopper(), json);
        json.endObject();
    }

    private static void figures(Optional<HarnessPlan.Solution> plan, JsonWriter json) throws IOException {
        if (plan.isPresent()) {
            json.name("excessNm").value(plan.get().excess());
            json.name("copperGrams").value(grams(plan.get()));
        }
    }

    private static long grams(HarnessPlan.Solution plan) {
        return Math.round(plan.copper() / NM_PER_M / MG_PER_G);
    }
}
