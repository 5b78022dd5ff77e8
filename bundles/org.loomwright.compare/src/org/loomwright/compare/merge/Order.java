// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The order of what two sides have. Where one of them left the order of the base alone, that of the other holds; where
 * both changed it, ours. What the other side alone has follows what it follows there. Linear.
 */
final class Order {

    private Order() {
    }

    static <K> List<K> merge(List<K> base, List<K> ours, List<K> theirs) {
        boolean oursLeads = keeps(base, theirs) || !keeps(base, ours);
        List<K> lead = oursLeads ? ours : theirs;
        List<K> other = oursLeads ? theirs : ours;
        Set<K> leading = new HashSet<>(lead);
        Map<K, List<K>> behind = new HashMap<>();
        K anchor = null;
        for (K each : other) {
            if (leading.contains(each)) {
                anchor = each;
            } else {
                behind.computeIfAbsent(anchor, any -> new ArrayList<>()).add(each);
            }
        }
        Set<K> known = new HashSet<>(base);
        known.addAll(other);
        List<K> merged = new ArrayList<>();
        List<K> waiting = new ArrayList<>(behind.getOrDefault(null, List.of()));
        for (K each : lead) {
            if (known.contains(each)) {
                merged.addAll(waiting);
                waiting.clear();
            }
            merged.add(each);
            waiting.addAll(behind.getOrDefault(each, List.of()));
        }
        merged.addAll(waiting);
        return merged;
    }

    /** Whether what both have stands in the same order. */
    private static <K> boolean keeps(List<K> base, List<K> side) {
        Set<K> before = new HashSet<>(base);
        Set<K> after = new HashSet<>(side);
        return base.stream().filter(after::contains).toList().equals(side.stream().filter(before::contains).toList());
    }
}
