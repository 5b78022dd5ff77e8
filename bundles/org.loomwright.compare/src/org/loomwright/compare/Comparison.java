// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare;

import java.util.List;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.facts.ChoiceNames;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.match.Matching;

/**
 * What is different between two sides.
 *
 * @param old      the old side
 * @param now      the new side
 * @param matching which element of one is which of the other
 * @param changes  the changes, by aspect and element
 */
public record Comparison(FactSheet old, FactSheet now, Matching matching, List<Change> changes) {

    public Comparison {
        changes = List.copyOf(changes);
    }

    /** The old side with the names that choices have on the new one in its conditions. Linear when one is renamed. */
    public FactSheet followed() {
        return ChoiceNames.follow(old, matching.partners());
    }

    /** The changes that a vehicle or the bench feels. */
    public List<Change> felt() {
        return changes.stream().filter(Change::isFelt).toList();
    }
}
