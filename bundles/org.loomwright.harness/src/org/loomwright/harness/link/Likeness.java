// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.loomwright.harness.Part;

/**
 * One part like another: everything of the other, but for what the part states itself. A figure or word replaces all of
 * its kind, whatever their conditions; a size, a pin and the connections between two pins replace those of the same
 * size, name or pair of pins; states replace all states; notes are added. The order is that of the other, what is new
 * follows. O(facts).
 */
final class Likeness {

    private Likeness() {
    }

    /** The part with the facts of the other, which has all of its own. Both are of one kind. */
    static Part of(Part part, Part other) {
        return new Part(part.kind(), part.name(), part.title().isEmpty() ? other.title() : part.title(), part.base(),
                ofKind(other.figures(), part.figures(), fact -> fact.value().kind()),
                ofKind(other.words(), part.words(), fact -> fact.value().kind() == Part.WordKind.NOTE
                        ? fact : fact.value().kind()),
                inPlace(other.sizes(), part.sizes(), Part.Size::size),
                inPlace(other.pins(), part.pins(), pin -> pin.name().text()),
                ofKind(other.joins(), part.joins(),
                        join -> new TreeSet<>(List.of(join.from().text(), join.to().text()))),
                part.states().isEmpty() ? other.states() : part.states(), part.span());
    }

    /** Facts of a kind that the part states take the place of all of that kind. */
    private static <T> List<T> ofKind(List<T> others, List<T> own, Function<T, Object> kind) {
        Set<Object> stated = own.stream().map(kind).collect(Collectors.toSet());
        List<T> result = new ArrayList<>(others);
        result.removeIf(each -> stated.contains(kind.apply(each)));
        result.addAll(own);
        return List.copyOf(result);
    }

    /** One fact that the part states takes the place of the one with the same key. */
    private static <T> List<T> inPlace(List<T> others, List<T> own, Function<T, Object> key) {
        Map<Object, T> result = new LinkedHashMap<>();
        others.forEach(each -> result.put(key.apply(each), each));
        own.forEach(each -> result.put(key.apply(each), each));
        return List.copyOf(result.values());
    }
}
