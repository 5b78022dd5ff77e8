// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.facts.ChoiceNames;
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

    /** What conditions speak of, so that they are read with the new names. */
    private static final List<Sort> CHOICES = List.of(Sort.PLATFORM, Sort.GROUP, Sort.MEMBER, Sort.OPTION,
            Sort.BREAK);

    /** Wires are matched over all circuits of their harness, so that a circuit can be split. */
    private static final List<Sort> ORDER = List.of(Sort.PART, Sort.WIRING, Sort.KIT, Sort.ZONE, Sort.GROUND,
            Sort.PLACE, Sort.POSITION, Sort.CONSTRAINT, Sort.STRAP, Sort.DEVICE, Sort.MODE, Sort.BREAKOUT, Sort.RUN,
            Sort.BARRIER, Sort.STUD, Sort.CONNECTOR, Sort.CIRCUIT, Sort.SPLICE, Sort.WIRE, Sort.PLACED, Sort.WAIVER,
            Sort.PRACTICE);

    private final Partners partners = new Partners();
    private Set<ItemId> verbatim;
    private long compared;

    private Matcher(Set<ItemId> verbatim) {
        this.verbatim = verbatim;
    }

    /** Matches two sides. */
    public static Matching match(FactSheet old, FactSheet now) {
        Matcher matcher = new Matcher(Verbatim.of(old, now));
        Map<Sort, List<Item>> before = bySort(old);
        Map<Sort, List<Item>> after = bySort(now);
        for (Sort sort : CHOICES) {
            matcher.sort(before.getOrDefault(sort, List.of()), after.getOrDefault(sort, List.of()));
        }
        FactSheet followed = ChoiceNames.follow(old, matcher.partners.all());
        if (followed != old) {
            matcher.verbatim = Verbatim.of(followed, now);
            before = bySort(followed);
        }
        for (Sort sort : ORDER) {
            matcher.sort(before.getOrDefault(sort, List.of()), after.getOrDefault(sort, List.of()));
        }
        return Matching.of(matcher.partners.all(), old.items().keySet(), now.items().keySet(), matcher.verbatim,
                matcher.compared);
    }

    private static Map<Sort, List<Item>> bySort(FactSheet sheet) {
        Map<Sort, List<Item>> all = new EnumMap<>(Sort.class);
        sheet.items().values().forEach(item -> all.computeIfAbsent(item.id().sort(), any -> new ArrayList<>())
                .add(item));
        return all;
    }

    private void sort(List<Item> before, List<Item> after) {
        Set<ItemId> taken = new HashSet<>();
        Map<String, List<Item>> old = new LinkedHashMap<>();
        for (Item item : before) {
            if (staysVerbatim(item)) {
                partners.put(item.id(), item.id());
                taken.add(item.id());
                compared++;
                continue;
            }
            String owner = partners.owner(item.id().owner());
            old.computeIfAbsent(home(owner), any -> new ArrayList<>()).add(item);
        }
        Map<String, List<Item>> now = new LinkedHashMap<>();
        for (Item item : after) {
            if (!taken.contains(item.id())) {
                now.computeIfAbsent(home(item.id().owner()), any -> new ArrayList<>()).add(item);
            }
        }
        old.forEach((owner, items) -> {
            Pool pool = new Pool(items, now.getOrDefault(owner, List.of()), partners);
            pool.match().forEach(partners::put);
            compared += pool.compared();
        });
    }

    /** Whether both sides state the same of it under the same name, and nothing that it names has another name now. */
    private boolean staysVerbatim(Item item) {
        return verbatim.contains(item.id()) && partners.owned(item.id()).equals(item.id())
                && !item.isTouchedBy(partners::name);
    }

    private static String home(String owner) {
        int slash = owner.indexOf('/');
        return slash < 0 ? owner : owner.substring(0, slash);
    }
}
