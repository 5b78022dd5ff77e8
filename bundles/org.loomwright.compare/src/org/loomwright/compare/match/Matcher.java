// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;

/**
 * Matches the elements of two sides, owners before what they own, and what is named before what names it, so that a
 * renamed connector is known when its wires are compared.
 *
 * <p>Pure. Linear in the number of elements as long as few of them change, and for each element that does bounded by
 * {@link Pool#MOST_CANDIDATES}; cubic only in the size of a knot of elements that are all alike, and there bounded by
 * {@link Pool#LARGEST_KNOT}.
 */
public final class Matcher {

    /** Wires are matched over all circuits of their harness, so that a circuit can be split. */
    private static final List<Sort> ORDER = List.of(Sort.PLATFORM, Sort.PART, Sort.WIRING, Sort.KIT, Sort.ZONE,
            Sort.GROUND, Sort.PLACE, Sort.POSITION, Sort.GROUP, Sort.OPTION, Sort.BREAK, Sort.CONSTRAINT, Sort.STRAP,
            Sort.DEVICE, Sort.MODE, Sort.BREAKOUT, Sort.RUN, Sort.BARRIER, Sort.STUD, Sort.CONNECTOR, Sort.CIRCUIT,
            Sort.SPLICE, Sort.WIRE, Sort.PLACED, Sort.WAIVER, Sort.PRACTICE);

    private final Map<ItemId, ItemId> partners = new HashMap<>();
    private long compared;

    private Matcher() {
    }

    /** Matches two sides. */
    public static Matching match(FactSheet old, FactSheet now) {
        Matcher matcher = new Matcher();
        Map<Sort, List<Item>> before = bySort(old);
        Map<Sort, List<Item>> after = bySort(now);
        for (Sort sort : ORDER) {
            matcher.sort(before.getOrDefault(sort, List.of()), after.getOrDefault(sort, List.of()));
        }
        return new Matching(new TreeMap<>(matcher.partners), matcher.compared);
    }

    private static Map<Sort, List<Item>> bySort(FactSheet sheet) {
        Map<Sort, List<Item>> all = new TreeMap<>();
        sheet.items().values().forEach(item -> all.computeIfAbsent(item.id().sort(), any -> new ArrayList<>())
                .add(item));
        return all;
    }

    private void sort(List<Item> before, List<Item> after) {
        Map<String, List<Item>> old = new LinkedHashMap<>();
        for (Item item : before) {
            String owner = Owners.owner(item.id().owner(), partners);
            old.computeIfAbsent(home(owner), any -> new ArrayList<>()).add(item);
        }
        Map<String, List<Item>> now = new LinkedHashMap<>();
        after.forEach(item -> now.computeIfAbsent(home(item.id().owner()), any -> new ArrayList<>()).add(item));
        old.forEach((owner, items) -> {
            Pool pool = new Pool(items, now.getOrDefault(owner, List.of()), partners);
            pool.match().forEach(partners::put);
            compared += pool.compared();
        });
    }

    private static String home(String owner) {
        int slash = owner.indexOf('/');
        return slash < 0 ? owner : owner.substring(0, slash);
    }
}
