// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.compare.matrix.Alike;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;

/**
 * A harness of ours for some drawings, as text without stations and lengths.
 *
 * <p>It has what any of the drawings has, for the vehicles of these drawings: each connector with the housing and the
 * other half of each year, each wire as thick as any vehicle needs it, circuits that only some vehicles use for these
 * alone, one number and colour for each function and beside it what it stands for. Which elements are the same is told
 * as in the {@linkplain org.loomwright.compare.matrix.Matrix matrix}. Coverings, clips and what a drawing does not say,
 * such as terminals, are left to the engineer.
 *
 * @param name      its name
 * @param text      its source
 * @param choices   what drawings do not agree about
 * @param contested breakouts that some drawings have before the one before them
 * @param moved     functions that may have one branch for all of their places, or one to each
 */
public record HarnessDraft(String name, String text, List<Choice> choices, List<String> contested,
        List<String> moved) {

    public HarnessDraft {
        choices = List.copyOf(choices);
        contested = List.copyOf(contested);
        moved = List.copyOf(moved);
    }

    /**
     * What is chosen where there is a choice.
     *
     * @param turned  contested breakouts that are to stand before the one before them
     * @param joined  moved functions that get one branch for all of their places
     * @param reasons by moved function, why it was chosen so, for people
     */
    public record Variant(Set<String> turned, Set<String> joined, Map<String, String> reasons) {

        /** Breakouts by their mean stations, a branch to each place. */
        public static final Variant PLAIN = new Variant(Set.of(), Set.of(), Map.of());

        public Variant {
            turned = Set.copyOf(turned);
            joined = Set.copyOf(joined);
            reasons = Map.copyOf(reasons);
        }
    }

    /** Why drawings cannot be covered by one harness at all; empty when they can. */
    public static Optional<String> trouble(List<WiringView> drawings) {
        for (WiringView each : drawings) {
            if (each.wiring().isHarness()) {
                return Optional.of(each.name() + " is a harness; a harness covers drawings");
            }
            if (!each.platform().name().equals(drawings.getFirst().platform().name())) {
                return Optional.of(each.name() + " is of another platform than " + drawings.getFirst().name());
            }
            if (each.wiring().datum().isEmpty()) {
                return Optional.of("drawing " + each.name() + " has no datum; say where its trunk is pinned");
            }
            if (!datum(each).equals(datum(drawings.getFirst()))) {
                return Optional.of("drawing " + each.name() + " counts from " + datum(each) + " and drawing "
                        + drawings.getFirst().name() + " from " + datum(drawings.getFirst())
                        + "; a harness has one datum, so bring them to one");
            }
        }
        return Optional.empty();
    }

    private static String datum(WiringView view) {
        return view.wiring().datum().map(Ref::text).orElse("");
    }

    /**
     * Drafts a harness. Pure; grows with the number of elements of the drawings, but for conditions.
     *
     * @param drawings of one platform and with one datum, see {@link #trouble}
     */
    public static HarnessDraft of(String name, Project project, List<WiringView> drawings, Variant variant,
            Cancel cancel) {
        Cover cover = new Cover(drawings);
        Alike alike = Alike.of(project, drawings, cancel);
        DraftRuns apart = new DraftRuns(cover, names(drawings), new ArrayList<>(), variant.turned(), Map.of());
        MovedFunctions moved = new MovedFunctions(cover, apart, alike);
        Map<String, String> joined = new HashMap<>();
        moved.all().stream().filter(each -> variant.joined().contains(MovedFunctions.key(each)))
                .forEach(each -> joined.putAll(apart.joined(each)));
        List<Choice> choices = new ArrayList<>();
        NameBook names = names(drawings);
        DraftRuns runs = new DraftRuns(cover, names, choices, variant.turned(), joined);
        StringBuilder out = new StringBuilder("// Drafted from the drawings that it covers. Lines with a comment are"
                + " choices: look at them.\n\nharness ").append(name).append(" of ")
                .append(drawings.getFirst().platform().name());
        Set<String> positions = drawings.stream().map(each -> each.wiring().position().map(Ref::text).orElse(""))
                .collect(Collectors.toCollection(LinkedHashSet::new));
        if (positions.size() == 1 && !positions.contains("")) {
            out.append(" fills ").append(positions.iterator().next());
        }
        out.append(" {\n    covers ").append(drawings.stream().map(WiringView::name).collect(Collectors.joining(", ")))
                .append("\n\n");
        cable(cover, choices, out);
        out.append("    datum ").append(datum(drawings.getFirst())).append("\n\n");
        runs.write(out);
        DraftWiring wiring = new DraftWiring(cover, runs, names, choices);
        wiring.write(alike, moved, variant.reasons(), out);
        return new HarnessDraft(name, out.append("}\n").toString(), choices, runs.contested(), moved.all().stream()
                .map(MovedFunctions::key).toList());
    }

    private static NameBook names(List<WiringView> drawings) {
        NameBook names = new NameBook();
        names.take(datum(drawings.getFirst()));
        return names;
    }

    private static void cable(Cover cover, List<Choice> choices, StringBuilder out) {
        Cover.Values cables = new Cover.Values();
        for (int c = 0; c < cover.views.size(); c++) {
            int column = c;
            cover.views.get(c).wiring().defaults().cable().forEach(fact -> cables.add(fact.value().toString(),
                    cover.in(column, fact.when()), column));
        }
        if (!cables.isEmpty()) {
            String cable = cables.common();
            if (!cables.isOne()) {
                String words = "cable " + cable + " as in " + cover.names(cables.columns(cable)) + "; others have "
                        + cables.all().keySet().stream().filter(each -> !each.equals(cable))
                                .collect(Collectors.joining(", "));
                choices.add(new Choice(Choice.Kind.LEFT, "cable", words));
                out.append("    // ").append(words).append('\n');
            }
            out.append("    cable ").append(cable).append('\n');
        }
    }
}
