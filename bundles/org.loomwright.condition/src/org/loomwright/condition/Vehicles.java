// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.math.BigInteger;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import org.loomwright.condition.Recent.Operation;
import org.loomwright.condition.internal.NodeLimit;

/**
 * The vehicles of a platform that can exist, and conditions on them. One for each analysis.
 *
 * <p>Exact however many vehicles there are; the effort grows with how the choices are tied to each other by
 * constraints, not with the number of vehicles. Choices that are tied should be declared near each other. When the
 * conditions in use need more than 2,000,000 decision nodes (about 100 MB), {@link TooManyCombinations} is thrown;
 * conditions made before stay usable. Conditions that nobody uses any more make room.
 *
 * <p>Safe for use by several threads: one lock guards the diagram behind its conditions, and what was asked lately is
 * answered without it.
 */
public final class Vehicles {
    /** The usual bound on decision nodes; reaching it takes about 100 MB and some seconds. */
    public static final int MOST_NODES = 2_000_000;

    private final ReentrantLock lock = new ReentrantLock();
    private final Space space;
    private final Pool pool;
    private final Recent recent = new Recent();
    private final Condition all;
    private final Condition none;

    private Vehicles(Choices choices, int mostNodes) {
        try {
            this.space = new Space(choices, mostNodes);
        } catch (NodeLimit limit) {
            throw tooMany(limit);
        }
        this.pool = new Pool(this, space.diagram());
        this.all = condition(space.possible());
        this.none = condition(Space.NONE);
    }

    /**
     * Returns the vehicles that the choices allow. Constraints with a problem are left out and reported by
     * {@link #problems}; constraints that contradict each other leave no vehicle.
     *
     * @throws TooManyCombinations if the constraints tie too many choices to each other
     */
    public static Vehicles of(Choices choices) {
        return new Vehicles(choices, MOST_NODES);
    }

    /** Returns vehicles with another bound on decision nodes; the smallest bound is about 10,000. */
    public static Vehicles of(Choices choices, int mostNodes) {
        return new Vehicles(choices, mostNodes);
    }

    public Choices choices() {
        return space.choices();
    }

    /** Returns what is wrong with the choices and their constraints, in order of declaration. */
    public List<Problem> problems() {
        return space.problems();
    }

    /** Returns every possible vehicle. */
    public Condition all() {
        return all;
    }

    /** Returns no vehicle. */
    public Condition none() {
        return none;
    }

    /** Returns how many vehicles are possible, exactly. */
    public BigInteger count() {
        return guarded(() -> space.count(space.possible()));
    }

    /**
     * Returns what a written condition means; what is wrong with it is in the result.
     *
     * @throws TooManyCombinations if there is no room for it
     */
    public Resolution resolve(Expression expression) {
        return guarded(() -> {
            Resolver resolver = space.resolver();
            int node = resolver.resolve(expression);
            Condition condition = node == Resolver.IGNORED ? all : condition(space.and(node, space.possible()));
            return new Resolution(condition, resolver.problems());
        });
    }

    /**
     * Returns the possible vehicles with the members of an assignment.
     *
     * @throws IllegalArgumentException for an axis or a member that the choices do not have
     */
    public Condition where(Assignment assignment) {
        return guarded(() -> condition(space.where(assignment)));
    }

    /** Returns the vehicles for which at least one of the conditions holds. */
    public Condition anyOf(Collection<Condition> conditions) {
        return conditions.stream().reduce(none(), Condition::or);
    }

    /** Returns the vehicles for which all of the conditions hold. */
    public Condition allOf(Collection<Condition> conditions) {
        return conditions.stream().reduce(all(), Condition::and);
    }

    /** Returns how much work was done so far. */
    public Work work() {
        return guarded(space::work);
    }

    boolean implies(Condition left, Condition right) {
        int from = node(left);
        int other = node(right);
        return from == other || left == none || right == all
                || yes(Operation.IMPLIES, left, right, () -> space.minus(from, other) == Space.NONE);
    }

    boolean excludes(Condition left, Condition right) {
        int one = node(left);
        int other = node(right);
        return left == none || right == none
                || one != other && yes(Operation.EXCLUDES, left, right, () -> space.and(one, other) == Space.NONE);
    }

    Condition and(Condition left, Condition right) {
        int one = node(left);
        int other = node(right);
        if (one == other || right == all || left == none) {
            return left;
        }
        return left == all || right == none ? right
                : result(Operation.AND, left, right, () -> space.and(one, other));
    }

    Condition or(Condition left, Condition right) {
        int one = node(left);
        int other = node(right);
        if (one == other || right == none || left == all) {
            return left;
        }
        return left == none || right == all ? right
                : result(Operation.OR, left, right, () -> space.or(one, other));
    }

    Condition minus(Condition left, Condition right) {
        int from = node(left);
        int other = node(right);
        if (left == none || right == none) {
            return left;
        }
        return from == other || right == all ? none
                : result(Operation.MINUS, left, right, () -> space.minus(from, other));
    }

    private Condition result(Operation operation, Condition left, Condition right, IntSupplier node) {
        Condition known = recent.find(operation, left, right);
        return known != null ? known
                : recent.keep(operation, left, right, guarded(() -> condition(node.getAsInt())));
    }

    private boolean yes(Operation operation, Condition left, Condition right, BooleanSupplier answer) {
        Condition known = recent.find(operation, left, right);
        if (known == null) {
            known = recent.keep(operation, left, right, guarded(answer::getAsBoolean) ? all : none);
        }
        return known == all;
    }

    BigInteger count(Condition condition) {
        return guarded(() -> space.count(node(condition)));
    }

    Set<String> support(Condition condition) {
        return guarded(() -> space.support(node(condition)));
    }

    String canonical(Condition condition) {
        return guarded(() -> space.canonical(node(condition)));
    }

    Wording wording(Condition condition) {
        return guarded(() -> space.wording(node(condition)));
    }

    Optional<Assignment> example(Condition condition) {
        return guarded(() -> space.example(node(condition)));
    }

    Assignments assignments(Condition condition, Collection<String> axes, int cap) {
        return guarded(() -> space.assignments(node(condition), axes, cap));
    }

    Cells split(Condition condition, List<Condition> conditions, int cap) {
        return guarded(() -> {
            int[] nodes = conditions.stream().mapToInt(this::node).toArray();
            return new Splitting(space, nodes, cap).cells(node(condition), this::condition);
        });
    }

    private int node(Condition condition) {
        if (condition.vehicles() != this) {
            throw new IllegalArgumentException("this condition is about other vehicles");
        }
        return condition.node();
    }

    private Condition condition(int node) {
        return pool.condition(node);
    }

    /** Does one piece of work under the lock; when there is no room for it, once more after making some. */
    private <T> T guarded(Supplier<T> work) {
        lock.lock();
        try {
            pool.dropUnused();
            return work.get();
        } catch (NodeLimit limit) {
            space.diagram().release();
            recent.clear();
            if (!pool.makeRoom()) {
                throw tooMany(limit);
            }
            return again(work);
        } finally {
            space.diagram().release();
            lock.unlock();
        }
    }

    private static <T> T again(Supplier<T> work) {
        try {
            return work.get();
        } catch (NodeLimit limit) {
            throw tooMany(limit);
        }
    }

    private static TooManyCombinations tooMany(NodeLimit limit) {
        String message = "the choices of this platform are tied to each other in too many ways to be followed exactly"
                + " (more than %,d decision nodes); declare choices that constrain each other next to each other,"
                + " or remove constraints";
        return new TooManyCombinations(String.format(Locale.ROOT, message, limit.mostNodes()));
    }
}
