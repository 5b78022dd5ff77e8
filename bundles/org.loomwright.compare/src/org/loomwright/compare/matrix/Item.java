// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.Set;

/**
 * An element of one drawing as matching sees it.
 *
 * @param <T>      the element
 * @param column   the drawing
 * @param name     its name or number
 * @param features what it does and where it sits; two elements are alike as far as they share these
 * @param element  the element
 */
record Item<T>(int column, String name, Set<String> features, T element) {

    Item {
        features = Set.copyOf(features);
    }

    /** Twice the number of features that both have over the sum of the numbers of both, from 0 to 1 (Dice 1945). */
    double likeness(Set<String> other) {
        if (features.isEmpty() && other.isEmpty()) {
            return 0;
        }
        Set<String> small = features.size() <= other.size() ? features : other;
        Set<String> large = small == features ? other : features;
        long shared = small.stream().filter(large::contains).count();
        return 2.0 * shared / (features.size() + other.size());
    }
}
