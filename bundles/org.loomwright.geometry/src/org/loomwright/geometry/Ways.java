// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry;

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
public final class Ways {

    private static final int MOST = 4_096;

    private final Condition whole;
    private final List<Condition> conditions = new ArrayList<>();

    /** Begins with the vehicles that have the thing. */
    public Ways(Condition whole) {
        this.whole = whole;
    }

    /** The cases of one fact, as they were added. */
    public record Fact<T>(int first, List<Case<T>> cases) {
    }

    /** One way: some of the vehicles, alike in every fact. */
    public record Way(Cell cell) {

        /** The vehicles. */
        public Condition when() {
            return cell.vehicles();
        }

        /** The first case of a fact that holds for them. */
        public <T> Optional<T> first(Fact<T> fact) {
            return all(fact).stream().findFirst();
        }

        /** All cases of a fact that hold for them. */
        public <T> List<T> all(Fact<T> fact) {
            return cell.holding().subSet(fact.first, fact.first + fact.cases.size()).stream()
                    .map(index -> fact.cases.get(index - fact.first).value()).toList();
        }
    }

    /** Adds a fact. */
    public <T> Fact<T> fact(List<Case<T>> cases) {
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
    public List<Way> list() {
        Cells cells = whole.split(conditions, MOST);
        if (!cells.complete()) {
            throw new TooManyCombinations("a wire is made in more than 4,096 ways; give it fewer conditional facts");
        }
        return cells.list().stream().map(Way::new).toList();
    }
}
