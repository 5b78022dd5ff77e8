// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.loomwright.geometry.Copper;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Length;

/**
 * The pieces of a harness by the reel that they are cut from. A wire that is made in several ways counts with its
 * longest, so a total is enough for every vehicle; for one vehicle it is exact.
 *
 * @param list the reels, by cable, size and colour
 */
public record Reels(List<Reel> list) {

    /**
     * What is cut from one reel.
     *
     * @param cable   name of the cable; empty when none is stated
     * @param size    as written; empty when none is stated
     * @param colour  empty when none is stated
     * @param pieces  the pieces, the longest first, those of unknown length last
     * @param length  all of it, each wire once
     * @param copper  mass of the conductors in g
     * @param unknown true when a piece of unknown length is left out
     */
    public record Reel(String cable, String size, String colour, List<Piece> pieces, Length length, double copper,
            boolean unknown) {
    }

    /** Sorts pieces by reel. O(n log n). */
    public static Reels of(List<Piece> pieces, Copper copper) {
        record Key(String cable, ConductorSize size, String colour) {
        }
        Comparator<String> natural = new NaturalOrder();
        Map<Key, List<Piece>> byReel = new TreeMap<>(Comparator.comparing(Key::cable, natural)
                .thenComparing(Key::size, Comparator.nullsFirst(Comparator.naturalOrder()))
                .thenComparing(Key::colour));
        for (Piece piece : pieces) {
            byReel.computeIfAbsent(new Key(piece.cable(), piece.size().orElse(null), piece.colour()),
                    any -> new ArrayList<>()).add(piece);
        }
        List<Reel> reels = new ArrayList<>();
        byReel.forEach((key, cut) -> {
            cut.sort(Comparator.comparing((Piece each) -> each.cut().map(Length::nanometres).orElse(-1L)).reversed()
                    .thenComparing(Piece::wire, natural));
            Map<String, Length> longest = new HashMap<>();
            cut.forEach(each -> each.cut().ifPresent(length -> longest.merge(each.wire(), length,
                    (one, other) -> one.compareTo(other) >= 0 ? one : other)));
            Length sum = longest.values().stream().reduce(Length.ZERO, Length::plus);
            reels.add(new Reel(key.cable(), key.size() == null ? "" : key.size().written(), key.colour(),
                    List.copyOf(cut), sum, key.size() == null ? 0 : copper.grams(key.size(), sum),
                    cut.stream().anyMatch(each -> each.cut().isEmpty())));
        });
        return new Reels(List.copyOf(reels));
    }

    /** All cable together. */
    public Length length() {
        return list.stream().map(Reel::length).reduce(Length.ZERO, Length::plus);
    }

    /** All copper in g. */
    public double copper() {
        return list.stream().mapToDouble(Reel::copper).sum();
    }
}
