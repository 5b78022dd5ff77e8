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
        HarnessPlan.Solution plan = whatIf.planned().plan().found().orElseThrow();
        StringBuilder out = new StringBuilder("\nwhat drives ")
                .append(Cells.printable(whatIf.planned().harness().name())).append(", planned anew each time\n\n");
        List<String> heads = new ArrayList<>(List.of(""));
        List<TextTable.Cell> excess = new ArrayList<>();
        List<TextTable.Cell> copper = new ArrayList<>();
        heads.add("as planned");
        excess.add(TextTable.Cell.word(Millimetres.excess(new Length(plan.excess()))));
        copper.add(TextTable.Cell.word(Long.toString(grams(plan))));
        for (int i = 0; i < whatIf.drawings().size(); i++) {
            Optional<HarnessPlan.Solution> without = whatIf.savings().without().get(i);
            heads.add("without " + Cells.printable(whatIf.drawings().get(i)));
            excess.add(TextTable.Cell.word(without.map(each -> Millimetres.excess(new Length(each.excess())))
                    .orElse("-")));
            copper.add(TextTable.Cell.word(without.map(each -> Long.toString(grams(each))).orElse("-")));
        }
        for (Savings.Allowed each : whatIf.savings().allowing()) {
            heads.add("allowing " + Millimetres.excess(new Length(each.limit())));
            excess.add(TextTable.Cell.word(each.plan().map(found -> Millimetres.excess(new Length(found.excess())))
                    .orElse("-")));
            copper.add(TextTable.Cell.word(each.plan().map(found -> Long.toString(grams(found))).orElse("-")));
        }
        whatIf.savings().leastCopper().ifPresent(least -> {
            heads.add("least copper");
            excess.add(TextTable.Cell.word(Millimetres.excess(new Length(least.excess()))));
            copper.add(TextTable.Cell.word(Long.toString(grams(least))));
        });
        new TextTable(heads, List.of(new TextTable.Column("excess mm", excess),
                new TextTable.Column("copper g", copper)), palette).append(width, out);
        if (!whatIf.savings().allowing().isEmpty()) {
            out.append('\n');
            whatIf.savings().allowing().forEach(each -> out.append(words(each, plan)).append('\n'));
        }
        return out.toString();
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
