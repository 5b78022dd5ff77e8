// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.match;

import java.util.HashMap;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;
import org.loomwright.compare.facts.Value;

/**
 * What an element is recognised by: each fact with the weight of its property, and what its neighbours say with a
 * weight of 1. Conditions do not count, but for that of the element itself; nor does its own name.
 *
 * @param weights weight by feature
 * @param total   sum of the weights
 */
record Features(Map<String, Double> weights, double total) {

    static Features of(Item item, UnaryOperator<ItemId> names) {
        Map<String, Double> weights = new HashMap<>();
        item.facts().forEach((slot, stated) -> {
            Property property = slot.property();
            if (property.weight() > 0) {
                String subject = property.name() + "\u0002" + slot.subject().renamed(names).key() + "\u0002";
                stated.forEach(each -> weights.put(subject + (property == Property.EXISTS
                        ? each.when().words() : each.value().renamed(names).key()), property.weight()));
            }
        });
        for (Value neighbour : item.neighbours()) {
            weights.put("\u0003" + neighbour.renamed(names).key(), 1.0);
        }
        return new Features(weights, weights.values().stream().mapToDouble(Double::doubleValue).sum());
    }

    /** Weight of what both have by the weight of what either has: from 0 to 1, and 1 for two without any feature. */
    double likeness(Features other) {
        if (total == 0 && other.total == 0) {
            return 1;
        }
        Map<String, Double> fewer = weights.size() <= other.weights.size() ? weights : other.weights;
        Map<String, Double> more = fewer == weights ? other.weights : weights;
        double shared = 0;
        for (Map.Entry<String, Double> each : fewer.entrySet()) {
            if (more.containsKey(each.getKey())) {
                shared += each.getValue();
            }
        }
        return shared / (total + other.total - shared);
    }
}
