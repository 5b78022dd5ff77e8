// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.facts.Item;

/**
 * Matches the elements of one sort and owner. Those of one name that are much alike are partners at once. The others
 * compete: each with those that share a rare feature with it, for the greatest sum of likeness, in which the same name
 * counts {@link #SAME_NAME}. Names that differ need a likeness of {@link #THRESHOLD}. What is left over and has the
 * same name is the same element, made anew.
 */
final class Pool {

    /** From this likeness on, two of one name are the same without further question. */
    static final double SURE = 0.9;

    /** The least likeness of a renamed element to what it was. */
    static final double THRESHOLD = 0.5;

    /** What the same name is worth. */
    static final double SAME_NAME = 0.25;

    /** The most elements that one is compared with, its namesake not counted. */
    static final int MOST_CANDIDATES = 16;

    /** A larger knot of elements that are all alike is matched best pair first. */
    static final int LARGEST_KNOT = 120;

    private static final int RARE = 24;
    private static final double MILLIONTHS = 1e6;
    private static final int RANKS = 1024;

    private final List<Item> old;
    private final Map<ItemId, Item> now = new LinkedHashMap<>();
    private final Partners known;
    private final Map<ItemId, ItemId> found = new HashMap<>();
    private final Map<ItemId, Features> features = new HashMap<>();
    private final Map<ItemId, Features> oldFeatures = new HashMap<>();
    private long compared;

    Pool(List<Item> old, List<Item> now, Partners known) {
        this.old = old;
        now.forEach(item -> this.now.put(item.id(), item));
        this.known = known;
    }

    long compared() {
        return compared;
    }

    /** New elements by old ones. */
    Map<ItemId, ItemId> match() {
        List<Item> open = new ArrayList<>();
        Map<ItemId, Item> free = new LinkedHashMap<>(now);
        for (Item item : old) {
            Item namesake = now.get(named(item));
            if (namesake != null && (isSame(item, namesake) || likeness(item, namesake) >= SURE)) {
                found.put(item.id(), namesake.id());
                free.remove(namesake.id());
            } else {
                open.add(item);
            }
        }
        boolean oneOfEach = open.size() == 1 && free.size() == 1;
        if (!open.isEmpty() && !free.isEmpty() && !(oneOfEach && free.containsKey(named(open.getFirst())))) {
            compete(open, new ArrayList<>(free.values()));
            found.values().forEach(free::remove);
        }
        for (Item item : open) {
            ItemId namesake = named(item);
            if (!found.containsKey(item.id()) && free.remove(namesake) != null) {
                found.put(item.id(), namesake);
            }
        }
        return found;
    }

    /** Whether two are alike in everything that could be weighed, which is told without weighing. */
    private boolean isSame(Item item, Item namesake) {
        boolean same = item.statesAs(namesake) && !item.isTouchedBy(known::name);
        compared += same ? 1 : 0;
        return same;
    }

    private ItemId named(Item item) {
        return known.owned(item.id());
    }

    private void compete(List<Item> open, List<Item> free) {
        Map<String, List<Integer>> holders = new HashMap<>();
        Map<ItemId, Integer> places = new HashMap<>();
        for (int i = 0; i < free.size(); i++) {
            int at = i;
            places.put(free.get(i).id(), i);
            features(free.get(i)).weights().keySet().forEach(each ->
                    holders.computeIfAbsent(each, any -> new ArrayList<>()).add(at));
        }
        List<Knots.Edge> edges = new ArrayList<>();
        for (int i = 0; i < open.size(); i++) {
            Item item = open.get(i);
            ItemId namesake = named(item);
            for (int j : candidates(item, holders, places.get(namesake))) {
                boolean same = free.get(j).id().equals(namesake);
                double likeness = likeness(item, free.get(j));
                if (same || likeness >= THRESHOLD) {
                    long weight = Math.round((likeness + (same ? SAME_NAME : 0)) * MILLIONTHS);
                    edges.add(new Knots.Edge(i, j, weight * RANKS + Math.max(1, RANKS - 1 - Math.abs(i - j))));
                }
            }
        }
        Knots.solve(edges, LARGEST_KNOT).forEach((i, j) -> found.put(open.get(i).id(), free.get(j).id()));
    }

    /** The namesake, and those that share most with it among the features that few have; in order. */
    private List<Integer> candidates(Item item, Map<String, List<Integer>> holders, Integer namesake) {
        Map<Integer, Double> shared = new TreeMap<>();
        oldFeatures(item).weights().forEach((feature, weight) -> {
            List<Integer> have = holders.getOrDefault(feature, List.of());
            if (have.size() <= RARE) {
                have.forEach(each -> shared.merge(each, weight, Double::sum));
            }
        });
        List<Integer> best = new ArrayList<>(shared.entrySet().stream()
                .sorted(Map.Entry.<Integer, Double>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .limit(MOST_CANDIDATES).map(Map.Entry::getKey).toList());
        if (namesake != null && !best.contains(namesake)) {
            best.add(namesake);
        }
        return best.stream().sorted().toList();
    }

    private double likeness(Item item, Item other) {
        compared++;
        return oldFeatures(item).likeness(features(other));
    }

    private Features oldFeatures(Item item) {
        return oldFeatures.computeIfAbsent(item.id(), any -> Features.of(item, known::name));
    }

    private Features features(Item item) {
        return features.computeIfAbsent(item.id(), any -> Features.of(item, id -> id));
    }
}
