// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.harness.link.WiringView;

/** The drawings that are covered, and conditions about their vehicles in the words of the language. */
final class Cover {

    final List<WiringView> views;
    final Condition whole;

    Cover(List<WiringView> views) {
        this.views = List.copyOf(views);
        this.whole = views.getFirst().platform().vehicles().anyOf(views.stream().map(WiringView::when).toList());
    }

    /** The vehicles of a drawing in which something holds. */
    Condition in(int column, Expression... all) {
        Condition condition = views.get(column).when();
        for (Expression each : all) {
            condition = condition.and(views.get(column).platform().vehicles().resolve(each).condition());
        }
        return condition;
    }

    /** {@code  when year <= 1969}; empty where it holds for all of something. What is not covered does not count. */
    String when(Condition condition, Condition within) {
        return within.implies(condition) ? "" : " when " + words(condition);
    }

    /** A condition in the fewest words; vehicles that are not covered are taken in where that is shorter. */
    String words(Condition condition) {
        String exact = condition.words();
        String wide = condition.or(whole.not()).words();
        return wide.length() < exact.length() ? wide : exact;
    }

    /** {@code front64, front70}. */
    String names(Collection<Integer> columns) {
        return columns.stream().map(column -> views.get(column).name()).collect(Collectors.joining(", "));
    }

    /** Values by the vehicles that have them. */
    static final class Values {

        private final Map<String, Condition> byText = new LinkedHashMap<>();
        private final Map<String, List<Integer>> columns = new LinkedHashMap<>();

        void add(String text, Condition when, int column) {
            if (!when.isNever()) {
                byText.merge(text, when, Condition::or);
                List<Integer> of = columns.computeIfAbsent(text, key -> new ArrayList<>());
                if (!of.contains(column)) {
                    of.add(column);
                }
            }
        }

        boolean isEmpty() {
            return byText.isEmpty();
        }

        boolean isOne() {
            return byText.size() == 1;
        }

        Map<String, Condition> all() {
            return byText;
        }

        List<Integer> columns(String text) {
            return columns.get(text);
        }

        /** The value that most drawings have; of equal ones the first. */
        String common() {
            String best = "";
            for (String each : byText.keySet()) {
                if (best.isEmpty() || columns.get(each).size() > columns.get(best).size()) {
                    best = each;
                }
            }
            return best;
        }
    }
}
