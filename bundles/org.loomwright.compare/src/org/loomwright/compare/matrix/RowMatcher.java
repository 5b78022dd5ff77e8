// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.loomwright.harness.link.NaturalOrder;

/**
 * Decides which elements of several drawings are the same thing and so share a row. Drawing after drawing, each element
 * is weighed against the rows so far that share a feature or the name with it; the best pairs are taken first, and no
 * row takes two elements of one drawing. A pair is good enough when
 * <ul>
 *   <li>names are equal and at least one feature is shared, or one of the two has none (a name alone proves nothing: a
 *       factory that numbers anew gives old numbers to other circuits), or
 *   <li>the {@linkplain Item#likeness likeness} is at least {@link #THRESHOLD}.
 * </ul>
 * What is left over begins a row of its own. A feature that more than {@value #COMMON} rows have tells nothing and
 * leads to no pair. So the work grows in proportion to the number of elements. The result depends on the order of the
 * drawings and of their elements only.
 *
 * @param <T> the elements
 */
final class RowMatcher<T> {

    /** The least likeness of two elements with different names. */
    static final double THRESHOLD = 0.5;

    private static final int COMMON = 8;

    private final boolean namesFirst;
    private final List<MatchedRow<T>> rows = new ArrayList<>();
    private final Map<String, Set<Integer>> byFeature = new HashMap<>();
    private final Map<String, Set<Integer>> byName = new HashMap<>();
    private long compared;

    /** @param namesFirst true when equal names go before greater likeness; else they only settle a tie */
    RowMatcher(boolean namesFirst) {
        this.namesFirst = namesFirst;
    }

    /** A row: at most one item for each column. */
    static final class MatchedRow<T> {

        private final Map<Integer, Item<T>> items = new LinkedHashMap<>();
        private final Set<Set<String>> shapes = new LinkedHashSet<>();
        private final Set<String> names = new LinkedHashSet<>();

        /** The item of a column. */
        Optional<Item<T>> item(int column) {
            return Optional.ofNullable(items.get(column));
        }

        /** The elements by column. */
        Map<Integer, T> byColumn() {
            Map<Integer, T> elements = new TreeMap<>();
            items.forEach((column, item) -> elements.put(column, item.element()));
            return elements;
        }

        /** All items, in the order of the columns. */
        List<Item<T>> items() {
            return List.copyOf(items.values());
        }
    }

    private record Candidate(int row, int item, boolean named, double likeness, String name) {
    }

    /** Adds the elements of the next drawing. */
    void add(List<Item<T>> items) {
        List<Candidate> candidates = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            weigh(i, items.get(i), candidates);
        }
        Comparator<Candidate> named = Comparator.comparing(Candidate::named).reversed();
        Comparator<Candidate> alike = Comparator.comparing(Candidate::likeness).reversed();
        candidates.sort((namesFirst ? named.thenComparing(alike) : alike.thenComparing(named))
                .thenComparing(Candidate::row).thenComparing(Candidate::name, new NaturalOrder())
                .thenComparing(Candidate::item));
        Map<Integer, Integer> rowOf = new HashMap<>();
        Set<Integer> taken = new LinkedHashSet<>();
        for (Candidate each : candidates) {
            if (!rowOf.containsKey(each.item()) && taken.add(each.row())) {
                rowOf.put(each.item(), each.row());
            }
        }
        for (int i = 0; i < items.size(); i++) {
            Integer row = rowOf.get(i);
            if (row == null) {
                row = rows.size();
                rows.add(new MatchedRow<>());
            }
            put(items.get(i), row);
        }
    }

    private void weigh(int index, Item<T> item, List<Candidate> candidates) {
        Set<Integer> near = new TreeSet<>(item.name().isEmpty() ? Set.of()
                : byName.getOrDefault(item.name(), Set.of()));
        for (String feature : item.features()) {
            Set<Integer> having = byFeature.getOrDefault(feature, Set.of());
            near.addAll(having.size() <= COMMON ? having : Set.of());
        }
        for (int row : near) {
            MatchedRow<T> candidate = rows.get(row);
            boolean named = !item.name().isEmpty() && candidate.names.contains(item.name());
            double best = 0;
            boolean bare = item.features().isEmpty();
            for (Set<String> shape : candidate.shapes) {
                compared++;
                best = Math.max(best, item.likeness(shape));
                bare |= shape.isEmpty();
            }
            if (named && (best > 0 || bare) || best >= THRESHOLD) {
                candidates.add(new Candidate(row, index, named, best, item.name()));
            }
        }
    }

    private void put(Item<T> item, int row) {
        MatchedRow<T> into = rows.get(row);
        into.items.put(item.column(), item);
        into.names.add(item.name());
        byName.computeIfAbsent(item.name(), key -> new TreeSet<>()).add(row);
        if (into.shapes.add(item.features())) {
            item.features().forEach(each -> byFeature.computeIfAbsent(each, key -> new TreeSet<>()).add(row));
        }
    }

    /** The rows so far: those of the first drawing in its order, then what each further one adds. */
    List<MatchedRow<T>> rows() {
        return List.copyOf(rows);
    }

    /** How many pairs were weighed so far. */
    long compared() {
        return compared;
    }
}
