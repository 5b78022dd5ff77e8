// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.loomwright.app.PlanHarness.Planned;
import org.loomwright.app.PlanHarness.Refusal;
import org.loomwright.fit.FitColumn;
import org.loomwright.fit.FitRow;
import org.loomwright.fit.Requirement;
import org.loomwright.fit.Way;
import org.loomwright.fit.plan.Conflict;
import org.loomwright.fit.plan.ConflictFigures;
import org.loomwright.fit.plan.FewestHarnesses;
import org.loomwright.fit.plan.Jumpers;
import org.loomwright.harness.Source;
import org.loomwright.quantity.Length;

/** Why one harness does not serve all drawings, and how many do. */
final class RefusalText {

    private RefusalText() {
    }

    /** The reasons, without which vehicles take what. */
    static void reasons(Planned planned, StringBuilder out) {
        Refusal refusal = planned.refusal().orElseThrow();
        Optional<List<String>> pins = Conflict.pins(planned.model().problem());
        if (pins.isPresent()) {
            String from = pins.get().getFirst();
            out.append("  ").append(from.isEmpty() ? "the datum" : "breakout " + from).append(" and breakout ")
                    .append(pins.get().getLast()).append(" are pinned too near each other, or the wrong way round, for"
                            + " the spacing and what stands between them\n  set one of them free\n");
            return;
        }
        out.append("  these cannot be served by one harness").append(refusal.conflict().minimal()
                ? ", and without any one of them they could:\n"
                : "; whether they could without one of them was not always found out:\n");
        for (String branch : refusal.conflict().branches()) {
            for (int vehicle : refusal.conflict().vehicles()) {
                asked(planned, branch, planned.model().asked().columns().get(vehicle), out);
            }
        }
        figures(planned).ifPresent(words -> out.append("    ").append(words).append('\n'));
        refusal.conflict().turned(planned.model().problem()).forEach(each -> out.append("  ")
                .append(planned.model().asked().columns().get(each.vehicle()).label()).append(" has ")
                .append(each.second()).append(" before ").append(each.first())
                .append("; turn them round in the harness, or leave it to a harness of its own\n"));
        FewestHarnesses.Answer fewest = refusal.fewest();
        if (!fewest.groups().isEmpty()) {
            boolean all = fewest.alone().isEmpty() && fewest.unclear().isEmpty();
            out.append("  ").append(fewest.isFewest() ? "the fewest that serve " : "found to serve ")
                    .append(all ? "all: " : "the others: ").append(fewest.groups().size()).append(proof(refusal))
                    .append('\n');
            fewest.groups().forEach(group -> out.append("    ").append(names(refusal, group)).append('\n'));
        }
        if (!fewest.alone().isEmpty()) {
            out.append("  no harness fits ").append(names(refusal, fewest.alone())).append(" even alone\n");
        }
        if (!fewest.unclear().isEmpty()) {
            out.append("  whether a harness fits ").append(names(refusal, fewest.unclear()))
                    .append(" alone was not found out\n");
        }
        jumpers(planned, refusal, out);
        out.append("  allow more with excessAtMost or doublingBackAtMost, set the spacing or a pin free, or cover"
                + " fewer drawings\n");
    }

    /** By how much what cannot be served together differs, against what is allowed; empty where that is not it. */
    private static Optional<String> figures(Planned planned) {
        Conflict conflict = planned.refusal().orElseThrow().conflict();
        Optional<String> differ = ConflictFigures.differ(conflict, planned.model().problem()).map(each -> "so "
                + place(planned, each.branch()) + " of " + labels(planned, List.of(each.longer())) + " needs "
                + mm(each.lengths()) + " more than that of " + labels(planned, List.of(each.shorter())) + "; " + mm(each
                        .stations()) + " of it can lie along the trunk, and " + mm(Math.max(0, each.allowed()))
                + " may be excess when all tolerances are taken off: " + mm(each.lengths() - each.stations() - each
                        .allowed()) + " too much");
        return differ.or(() -> ConflictFigures.apart(conflict, planned.model().problem()).map(each -> {
            long between = each.far().last() - each.near().first();
            boolean one = each.near().branch().equals(each.far().branch());
            String words = "so " + place(planned, each.near().branch()) + window(planned, each.near()) + ", and "
                    + (one ? "that" : place(planned, each.far().branch())) + window(planned, each.far());
            return one ? words + ": "
                    + mm(each.far().first() - each.near().last()) + " apart"
                    : words + ", and these are to be " + (between < each.least() ? mm(each.least()) + " apart or more"
                            : mm(each.most()) + " apart at most");
        }));
    }

    private static String window(Planned planned, ConflictFigures.Window window) {
        return " of " + labels(planned, window.vehicles()) + " can leave the trunk at "
                + Millimetres.exact(new Length(window.first())) + " to " + mm(window.last());
    }

    /** The drawings, which is enough where no two of the vehicles have the same. */
    private static String labels(Planned planned, List<Integer> vehicles) {
        List<FitColumn> columns = planned.model().asked().columns();
        List<Integer> all = planned.refusal().orElseThrow().conflict().vehicles();
        boolean differ = all.stream().map(each -> columns.get(each).drawing()).distinct().count() == all.size();
        return vehicles.stream().map(columns::get).map(each -> differ ? each.drawing() : each.label())
                .collect(Collectors.joining(" and "));
    }

    private static String mm(long nanometres) {
        return Millimetres.exact(new Length(nanometres)) + " mm";
    }

    static String proof(Refusal refusal) {
        FewestHarnesses.Answer fewest = refusal.fewest();
        return fewest.isClique() ? "; no two of " + names(refusal, fewest.apart()) + " go together"
                : fewest.isFewest() ? "; every way to make do with fewer was tried"
                : "; at least " + Math.max(1, fewest.apart().size()) + " are needed; " + (fewest.open() == 0
                        ? "not every way to make do with fewer was tried" : "of " + fewest.open() + " of "
                        + fewest.asked() + " sets that were tried it was not found out whether one harness fits them");
    }

    private static void jumpers(Planned planned, Refusal refusal, StringBuilder out) {
        refusal.jumpers().ifPresent(answer -> {
            out.append("  one harness serves all with ").append(answer.jumpers().size())
                    .append(answer.jumpers().size() == 1 ? " jumper" : " jumpers")
                    .append(answer.isFewest() ? "; no fewer do\n" : answer.atLeast() == 0 ? "\n"
                            : "; fewer than " + answer.atLeast() + " do not\n");
            answer.jumpers().forEach(each -> out.append("    ").append(place(planned, each.branch())).append(" in ")
                    .append(planned.model().asked().columns().get(each.vehicle()).label()).append(": ")
                    .append(Millimetres.exact(new Length(each.length()))).append(" mm or longer\n"));
            refusal.texts().stream().skip(1).forEach(each -> out.append("    as a lead: ").append(each.file())
                    .append(", with the harness for it, goes where --to says\n"));
        });
    }

    private static String place(Planned planned, String branch) {
        return planned.model().asked().rows().stream().filter(row -> row.branch().equals(branch)).findFirst()
                .map(row -> Cells.printable(row.place())).orElse(branch);
    }

    /** What the vehicles of a drawing take, by its index. */
    static String takes(Planned planned, Refusal refusal, int index) {
        if (refusal.fewest().alone().contains(index)) {
            return "not covered, because no harness fits it even alone";
        }
        if (refusal.fewest().unclear().contains(index)) {
            return "not known, because whether a harness fits it alone was not found out";
        }
        int group = IntStream.range(0, refusal.fewest().groups().size())
                .filter(g -> refusal.fewest().groups().get(g).contains(index)).findFirst().orElse(-1);
        return "harness " + (group + 1) + refusal.jumpers().map(answer -> {
            String to = answer.jumpers().stream().filter(each -> planned.model().asked().columns()
                    .get(each.vehicle()).drawing().equals(refusal.drawings().get(index)))
                    .map(each -> place(planned, each.branch())).distinct().collect(Collectors.joining(", "));
            return "; or the one harness " + (to.isEmpty() ? "as it is" : "with a jumper to " + to);
        }).orElse("");
    }

    static String names(Refusal refusal, List<Integer> drawings) {
        return drawings.stream().map(refusal.drawings()::get).collect(Collectors.joining(", "));
    }

    private static void asked(Planned planned, String branch, FitColumn column, StringBuilder out) {
        for (FitColumn.Asked asked : column.requirements()) {
            FitRow row = planned.model().asked().rows().get(asked.row());
            if (row.branch().equals(branch) && asked.requirement() instanceof Requirement.Reach reach) {
                String leaves = reach.demand().way() instanceof Way.Direct direct
                        ? "leaves the trunk at " + Millimetres.exact(new Length(direct.station())) + " mm, " : "";
                out.append("    ").append(Cells.printable(reach.demand().place())).append(" in ").append(column.label())
                        .append(": ").append(leaves).append("needs ").append(Millimetres.excess(reach.demand().factory()
                                .plus(reach.demand().extra()))).append(" mm, ± ")
                        .append(Millimetres.excess(reach.demand().reachAllowance())).append(" mm in all, ")
                        .append(Millimetres.exact(reach.demand().excessLimit())).append(" mm excess allowed\n");
            }
        }
    }

    static void json(Planned planned, JsonWriter json) throws IOException {
        Refusal refusal = planned.refusal().orElseThrow();
        json.name("conflict").beginObject();
        json.name("branches").beginArray();
        for (String branch : refusal.conflict().branches()) {
            json.value(branch);
        }
        json.endArray();
        json.name("vehicles").beginArray();
        for (int vehicle : refusal.conflict().vehicles()) {
            json.value(planned.model().asked().columns().get(vehicle).label());
        }
        json.endArray();
        json.name("minimal").value(refusal.conflict().minimal());
        Optional<String> figures = figures(planned);
        if (figures.isPresent()) {
            json.name("words").value(figures.get());
        }
        json.endObject();
        json.name("jumpers").beginArray();
        for (Jumpers.Jumper each : refusal.jumpers().map(Jumpers.Answer::jumpers).orElse(List.of())) {
            json.beginObject();
            json.name("branch").value(each.branch());
            json.name("vehicles").value(planned.model().asked().columns().get(each.vehicle()).label());
            json.name("atLeastNm").value(each.length());
            json.endObject();
        }
        json.endArray();
        if (refusal.jumpers().isPresent()) {
            json.name("jumpersAtLeast").value(refusal.jumpers().get().atLeast());
        }
        json.name("jumperFiles").beginArray();
        for (Source each : refusal.texts()) {
            json.value(each.file());
        }
        json.endArray();
        json.name("fewest").beginArray();
        for (List<Integer> group : refusal.fewest().groups()) {
            json.beginArray();
            for (int drawing : group) {
                json.value(refusal.drawings().get(drawing));
            }
            json.endArray();
        }
        json.endArray();
        json.name("isFewest").value(refusal.fewest().isFewest());
        json.name("atLeast").value(Math.max(1, refusal.fewest().apart().size()));
        json.name("setsNotKnown").value(refusal.fewest().open());
        names(json, "fitsNone", refusal, refusal.fewest().alone());
        names(json, "notKnown", refusal, refusal.fewest().unclear());
    }

    private static void names(JsonWriter json, String name, Refusal refusal, List<Integer> drawings)
            throws IOException {
        json.name(name).beginArray();
        for (int drawing : drawings) {
            json.value(refusal.drawings().get(drawing));
        }
        json.endArray();
    }
}
