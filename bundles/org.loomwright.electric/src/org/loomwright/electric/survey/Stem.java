// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.loomwright.electric.network.Junction;
import org.loomwright.electric.network.Piece;

/**
 * What of a core matters to one block: all but the dead ends that remain when the other blocks are taken away. What
 * these draw at the end of one, they draw where it begins.
 *
 * @param core  the pieces that remain, in order
 * @param moved where what is drawn at a junction that is gone is drawn now
 */
record Stem(List<Piece> core, Map<Junction, Junction> moved) {

    /** Prunes the core for a block. Linear in the pieces. */
    static Stem of(Blocks cut, List<Piece> block) {
        Map<Junction, List<Piece>> at = new HashMap<>();
        cut.core().forEach(each -> {
            at.computeIfAbsent(each.from(), key -> new ArrayList<>()).add(each);
            at.computeIfAbsent(each.to(), key -> new ArrayList<>()).add(each);
        });
        Set<Junction> kept = new HashSet<>(cut.grounds());
        block.forEach(each -> {
            kept.add(each.from());
            kept.add(each.to());
        });
        Deque<Junction> ends = new ArrayDeque<>();
        at.forEach((junction, pieces) -> {
            if (pieces.size() == 1 && !kept.contains(junction)) {
                ends.add(junction);
            }
        });
        Set<Piece> gone = new HashSet<>();
        Map<Junction, Junction> step = new HashMap<>();
        while (!ends.isEmpty()) {
            Junction end = ends.remove();
            if (at.get(end).size() == 1) {
                Piece piece = at.get(end).getFirst();
                Junction other = piece.from().equals(end) ? piece.to() : piece.from();
                gone.add(piece);
                step.put(end, other);
                at.get(end).clear();
                at.get(other).remove(piece);
                if (at.get(other).size() == 1 && !kept.contains(other)) {
                    ends.add(other);
                }
            }
        }
        Map<Junction, Junction> moved = new HashMap<>();
        step.keySet().forEach(each -> {
            Junction place = each;
            while (step.containsKey(place)) {
                place = step.get(place);
            }
            moved.put(each, place);
        });
        return new Stem(cut.core().stream().filter(each -> !gone.contains(each)).toList(), moved);
    }

    /** Returns where what is drawn at a junction is drawn. */
    Junction place(Junction junction) {
        return moved.getOrDefault(junction, junction);
    }
}
