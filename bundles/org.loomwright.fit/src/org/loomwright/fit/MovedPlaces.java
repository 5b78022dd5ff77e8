// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.WiringView;

/**
 * Where a function is at another place in some vehicles: a branch of ours goes where the drawing has what its connector
 * mates, when the drawing has no branch to the place that ours names, and no other branch of ours goes there.
 */
final class MovedPlaces {

    private MovedPlaces() {
    }

    /**
     * The places that branches of ours go to instead of their own.
     *
     * @param ours   the branches of the harness that the vehicles use
     * @param theirs the branches of the drawing that the vehicles have
     * @return places by branch of ours; nothing for those that go to their own or nowhere
     */
    static Map<String, String> of(WiringView harness, WiringView drawing, Condition vehicles, List<Run> ours,
            List<Run> theirs) {
        Set<String> own = ours.stream().map(MovedPlaces::place).collect(Collectors.toCollection(HashSet::new));
        Set<String> there = theirs.stream().map(MovedPlaces::place).collect(Collectors.toCollection(HashSet::new));
        drawing.wiring().datum().ifPresent(ref -> there.add(ref.text()));
        Map<String, String> moved = new HashMap<>();
        for (Run branch : ours) {
            if (there.contains(place(branch))) {
                continue;
            }
            Set<ConnectorView.Mate> mates = mates(harness, branch, vehicles).collect(Collectors.toSet());
            List<String> places = theirs.stream()
                    .filter(each -> mates(drawing, each, vehicles).anyMatch(mates::contains)).map(MovedPlaces::place)
                    .filter(each -> !own.contains(each)).distinct().toList();
            if (places.size() == 1) {
                moved.put(branch.name().text(), places.getFirst());
            }
        }
        return moved;
    }

    private static String place(Run branch) {
        return branch.to().map(Ref::text).orElse("");
    }

    /** What connectors at the end of a branch plug into in some of the vehicles. */
    private static Stream<ConnectorView.Mate> mates(WiringView view, Run branch, Condition vehicles) {
        return view.connectors().values().stream()
                .filter(each -> each.connector().branch().map(Ref::text).filter(branch.name().text()::equals)
                        .isPresent())
                .flatMap(each -> each.mates().stream().filter(mate -> !mate.when().and(each.when()).excludes(vehicles)))
                .map(each -> each.value());
    }
}
