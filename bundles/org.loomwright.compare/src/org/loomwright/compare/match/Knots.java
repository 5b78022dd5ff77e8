// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Takes a competition apart into knots that have nothing to do with each other, and solves each. */
final class Knots {

    private final Map<Integer, Integer> up = new HashMap<>();

    private Knots() {
    }

    /** An old and a new element that may be partners, and what that is worth. */
    record Edge(int old, int now, long weight) {
    }

    /** The new partner of each old element that gets one. */
    static Map<Integer, Integer> solve(List<Edge> edges, int largest) {
        Knots knots = new Knots();
        edges.forEach(edge -> knots.join(edge.old(), ~edge.now()));
        Map<Integer, List<Edge>> byKnot = new TreeMap<>();
        edges.forEach(edge -> byKnot.computeIfAbsent(knots.find(edge.old()), any -> new ArrayList<>()).add(edge));
        Map<Integer, Integer> partners = new TreeMap<>();
        byKnot.values().forEach(knot -> partners.putAll(one(knot, largest)));
        return partners;
    }

    private static Map<Integer, Integer> one(List<Edge> edges, int largest) {
        List<Integer> rows = List.copyOf(new TreeSet<>(edges.stream().map(Edge::old).toList()));
        List<Integer> columns = List.copyOf(new TreeSet<>(edges.stream().map(Edge::now).toList()));
        if (Math.max(rows.size(), columns.size()) > largest) {
            return bestFirst(edges);
        }
        Map<Integer, Integer> rowOf = index(rows);
        Map<Integer, Integer> columnOf = index(columns);
        long[][] weights = new long[rows.size()][columns.size()];
        edges.forEach(edge -> weights[rowOf.get(edge.old())][columnOf.get(edge.now())] = edge.weight());
        int[] best = Assignment.best(weights);
        Map<Integer, Integer> partners = new TreeMap<>();
        for (int i = 0; i < best.length; i++) {
            if (best[i] >= 0) {
                partners.put(rows.get(i), columns.get(best[i]));
            }
        }
        return partners;
    }

    private static Map<Integer, Integer> index(List<Integer> sorted) {
        Map<Integer, Integer> index = new HashMap<>();
        for (int i = 0; i < sorted.size(); i++) {
            index.put(sorted.get(i), i);
        }
        return index;
    }

    private static Map<Integer, Integer> bestFirst(List<Edge> edges) {
        Map<Integer, Integer> partners = new TreeMap<>();
        Set<Integer> taken = new HashSet<>();
        edges.stream().sorted(Comparator.comparingLong((Edge edge) -> -edge.weight()).thenComparing(Edge::old)
                .thenComparing(Edge::now)).forEach(edge -> {
                    if (!partners.containsKey(edge.old()) && taken.add(edge.now())) {
                        partners.put(edge.old(), edge.now());
                    }
                });
        return partners;
    }

    private int find(int each) {
        int root = each;
        while (up.getOrDefault(root, root) != root) {
            root = up.get(root);
        }
        int at = each;
        while (at != root) {
            int next = up.getOrDefault(at, at);
            up.put(at, root);
            at = next;
        }
        return root;
    }

    private void join(int one, int other) {
        int left = find(one);
        int right = find(other);
        if (left != right) {
            up.put(Math.max(left, right), Math.min(left, right));
        }
    }
}
