// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.text.Figures;

/**
 * A drawing or harness as a strip: its trunk stretched out, its branches where they leave it. Lengths on paper are in
 * millimetres of the harness.
 *
 * @param names  the drawings and harnesses that can be shown
 * @param name   the one that is shown; empty for none
 * @param items  what is drawn, in the order of the keyboard: along the trunk, and branches after their breakout
 * @param length the length of the longest trunk, in millimetres
 * @param words  what is shown
 */
public record Strip(List<String> names, String name, List<Item> items, double length, String words) {

    public Strip {
        names = List.copyOf(names);
        items = List.copyOf(items);
    }

    /** What an item is. */
    public enum Kind {
        DATUM, BREAKOUT, BRANCH
    }

    /**
     * Something that is drawn.
     *
     * @param kind    what it is
     * @param name    its name
     * @param station where it is on the trunk, or where its branch leaves it, in mm from the datum; negative before it
     * @param depth   how many branches lie between it and the trunk
     * @param length  for a branch its length in mm; 0 when it is unknown
     * @param label   words beside it
     * @param detail  all of it in words
     * @param there   false when none of the chosen vehicles has it
     * @param span    where it is stated
     */
    public record Item(Kind kind, String name, double station, int depth, double length, String label, String detail,
            boolean there, Span span) {
    }

    static Strip of(Project project, String wanted, Choice choice) {
        List<String> names = project.wirings().values().stream().filter(each -> !each.wiring().runs().isEmpty())
                .map(WiringView::name).toList();
        String name = names.contains(wanted) ? wanted
                : project.harnesses().stream().map(WiringView::name).filter(names::contains).findFirst()
                .or(() -> names.stream().findFirst()).orElse("");
        if (name.isEmpty()) {
            return new Strip(names, "", List.of(), 0, "No drawing and no harness of this project has a trunk.");
        }
        WiringView view = project.wiring(name).orElseThrow();
        HarnessTree tree = HarnessTree.of(view);
        List<Item> items = new ArrayList<>();
        tree.datum().ifPresent(datum -> items.add(new Item(Kind.DATUM, datum.name(), 0, 0, 0, datum.name(),
                "datum at " + datum.name(), true, datum.span())));
        Map<String, List<TreeRun>> leaving = new HashMap<>();
        tree.runs().stream().filter(run -> run.end().isPresent()).forEach(run ->
                leaving.computeIfAbsent(run.start().name(), any -> new ArrayList<>()).add(run));
        tree.datum().ifPresent(datum -> branches(leaving, datum, 0, 0, project, choice, items));
        double longest = 1;
        for (TreeRun trunk : tree.runs().stream().filter(run -> run.end().isEmpty()).toList()) {
            List<Spot> spots = trunk.points().stream().filter(spot -> spot.station().isKnown())
                    .sorted(Comparator.comparing(spot -> spot.station().length().orElseThrow())).toList();
            for (Spot spot : spots) {
                double station = mm(spot.station().length());
                longest = Math.max(longest, station);
                items.add(new Item(Kind.BREAKOUT, spot.name(), station, 0, 0, spot.name(), "breakout " + spot.name()
                        + " on " + trunk.name() + " at " + words(spot.station().length()), has(spot.when(), project,
                        choice), spot.span()));
                branches(leaving, spot, station, 0, project, choice, items);
            }
        }
        String title = view.wiring().title();
        return new Strip(names, name, items, longest, name + (title.isBlank() ? "" : ", " + title) + ", for "
                + choice.words() + ". Arrow keys walk along it, Enter opens the line.");
    }

    private static void branches(Map<String, List<TreeRun>> leaving, Spot at, double station, int depth,
            Project project, Choice choice, List<Item> items) {
        for (TreeRun branch : leaving.getOrDefault(at.name(), List.of())) {
            Spot end = branch.end().orElseThrow();
            String to = branch.run().to().map(ref -> ref.text()).orElse("nowhere");
            boolean there = has(branch.when(), project, choice);
            items.add(new Item(Kind.BRANCH, branch.name(), station, depth, mm(end.station().length()),
                    to + " " + words(end.station().length()), "branch " + branch.name() + " from " + at.label()
                    + " to " + to + ", " + words(end.station().length())
                    + (there ? "" : "; not in the chosen vehicles"), there, branch.run().span()));
            for (Spot spot : branch.points()) {
                if (spot.kind() == Spot.Kind.BREAKOUT && depth < 8) {
                    branches(leaving, spot, station, depth + 1, project, choice, items);
                }
            }
        }
    }

    private static boolean has(Condition when, Project project, Choice choice) {
        return choice.touches(when, project);
    }

    private static double mm(Optional<Length> length) {
        return length.map(Length::toMillimetres).orElse(0.0);
    }

    private static String words(Optional<Length> length) {
        return length.map(Figures::written).orElse("of unknown length");
    }
}
