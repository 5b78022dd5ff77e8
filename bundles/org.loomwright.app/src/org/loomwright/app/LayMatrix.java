// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.compare.matrix.Matrix;
import org.loomwright.compare.matrix.PlaceMatrix;
import org.loomwright.condition.Choices;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;

/** Chooses the drawings of a project that stand side by side, and lays them out. */
public final class LayMatrix {

    private static final String NO_POSITION = "no position";

    private LayMatrix() {
    }

    /**
     * A matrix for each position that two drawings or more fill, in the order of the sources. Columns are in the order
     * of the first year of their vehicles.
     *
     * @throws BadCall if there is no such position
     */
    public static List<Matrix> all(Project project, Cancel cancel) throws BadCall {
        List<Matrix> all = new ArrayList<>();
        for (Map.Entry<String, List<WiringView>> each : byPosition(project).entrySet()) {
            if (each.getValue().size() > 1) {
                all.add(lay(each.getKey(), project, each.getValue(), cancel));
            }
        }
        if (all.isEmpty()) {
            throw new BadCall("nothing to lay side by side: no two drawings fill one position; name the drawings");
        }
        return List.copyOf(all);
    }

    /**
     * The matrix of one position.
     *
     * @throws BadCall if no drawing fills it, or only one
     */
    public static Matrix position(Project project, String position, Cancel cancel) throws BadCall {
        Map<String, List<WiringView>> all = byPosition(project);
        List<WiringView> views = all.getOrDefault(position, List.of());
        if (views.isEmpty()) {
            throw new BadCall("no drawing fills the position '" + position + "'" + NearNames.or(position, all.keySet(),
                    "; the project has no drawing"));
        }
        if (views.size() == 1) {
            throw new BadCall("only " + views.getFirst().name() + " fills the position '" + position
                    + "'; it has nothing to stand beside");
        }
        return lay(position, project, views, cancel);
    }

    /**
     * The matrix of some drawings or harnesses, in the order given.
     *
     * @throws BadCall if one does not exist, or if there are not two of them
     */
    public static Matrix named(Project project, List<String> names, Cancel cancel) throws BadCall {
        List<WiringView> views = new ArrayList<>();
        for (String name : new LinkedHashSet<>(names)) {
            views.add(project.wiring(name).orElseThrow(() -> new BadCall("no drawing and no harness is called '" + name
                    + "'" + NearNames.or(name, project.wirings().keySet(), "; the project has none"))));
        }
        if (views.size() < 2) {
            throw new BadCall("name at least two drawings, or none for all that fill one position");
        }
        Set<String> positions = views.stream().map(LayMatrix::positionOf).collect(Collectors.toSet());
        return new PlaceMatrix().lay(positions.size() == 1 ? positions.iterator().next() : "side by side", project,
                views, cancel);
    }

    private static Matrix lay(String name, Project project, List<WiringView> views, Cancel cancel) {
        List<WiringView> sorted = new ArrayList<>(views);
        sorted.sort(Comparator.comparingInt(LayMatrix::firstYear));
        return new PlaceMatrix().lay(name, project, sorted, cancel);
    }

    /** By position; a position that drawings of several platforms fill has the platform in its name. */
    private static Map<String, List<WiringView>> byPosition(Project project) {
        Map<String, Set<String>> platforms = project.drawings().stream().collect(Collectors.groupingBy(
                LayMatrix::positionOf, Collectors.mapping(view -> view.platform().name(), Collectors.toSet())));
        Map<String, List<WiringView>> groups = new LinkedHashMap<>();
        for (WiringView view : project.drawings()) {
            String position = positionOf(view);
            groups.computeIfAbsent(platforms.get(position).size() > 1 ? position + " of " + view.platform().name()
                    : position,
                    key -> new ArrayList<>()).add(view);
        }
        return groups;
    }

    private static String positionOf(WiringView view) {
        return view.wiring().position().map(Ref::text).filter(text -> !text.isEmpty()).orElse(NO_POSITION);
    }

    /** Where the first year of its vehicles stands among the years; a drawing for no vehicle comes last. */
    private static int firstYear(WiringView view) {
        try {
            Optional<String> year = view.when().assignments(Set.of(Choices.YEAR), 1).list().stream().findFirst()
                    .map(each -> each.members().get(Choices.YEAR));
            return view.platform().vehicles().choices().axis(Choices.YEAR)
                    .map(axis -> year.map(axis.members()::indexOf).orElse(Integer.MAX_VALUE)).orElse(0);
        } catch (TooManyCombinations e) {
            return Integer.MAX_VALUE;
        }
    }
}
