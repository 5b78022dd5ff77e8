// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Cell;
import org.loomwright.condition.Cells;
import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.link.Case;

/**
 * The different ways in which something is made: its vehicles, taken apart by which of its conditional facts hold. Used
 * by one thread: first every fact is added, then the ways are asked for.
 */
final class Ways {

    private static final int MOST = 4_096;

    private final Condition whole;
    private final List<Condition> conditions = new ArrayList<>();

    /** Begins with the vehicles that have the thing. */
    Ways(Condition whole) {
        this.whole = whole;
    }

    /** The cases of one fact, as they were added. */
    record Fact<T>(int first, List<Case<T>> cases) {
    }

    /** One way: some of the vehicles, alike in every fact. */
    record Way(Cell cell) {

        /** The vehicles. */
        Condition when() {
            return cell.vehicles();
        }

        /** The first case of a fact that holds for them. */
        <T> Optional<T> first(Fact<T> fact) {
            return all(fact).stream().findFirst();
        }

        /** All cases of a fact that hold for them. */
        <T> List<T> all(Fact<T> fact) {
            return cell.holding().subSet(fact.first, fact.first + fact.cases.size()).stream()
                    .map(index -> fact.cases.get(index - fact.first).value()).toList();
        }
    }

    /** Adds a fact. */
    <T> Fact<T> fact(List<Case<T>> cases) {
        Fact<T> fact = new Fact<>(conditions.size(), List.copyOf(cases));
        cases.forEach(each -> conditions.add(each.when()));
        return fact;
    }

    /**
     * The ways; together they are all the vehicles, and no vehicle is in two. Grows with their number times that of the
     * cases.
     *
     * @throws TooManyCombinations if there are more than 4,096
     */
    List<Way> list() {
        Cells cells = whole.split(conditions, MOST);
        if (!cells.complete()) {
            throw new TooManyCombinations("a wire is made in more than 4,096 ways; give it fewer conditional facts");
        }
        return cells.list().stream().map(Way::new).toList();
    }
}
