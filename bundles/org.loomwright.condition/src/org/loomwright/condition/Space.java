// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.internal.Covering;
import org.loomwright.condition.internal.Diagram;
import org.loomwright.condition.internal.Walk;

/** The possible vehicles as a function of a diagram, and what conditions ask about it. Not safe for several threads. */
final class Space {
    static final int NONE = Diagram.NONE;

    private final Choices choices;
    private final Names names;
    private final Diagram diagram;
    private final Ties ties;
    private final int possible;
    private final List<Problem> problems;
    private final Covering covering;
    private final Phrases phrases;

    Space(Choices choices, int mostNodes) {
        this.choices = choices;
        this.names = new Names(choices);
        this.diagram = new Diagram(sizes(choices), mostNodes);
        this.ties = new Ties(diagram.axes());
        this.phrases = new Phrases(choices);
        List<Problem> found = new ArrayList<>(choices.problems());
        List<Integer> allowed = new ArrayList<>();
        for (Constraint constraint : choices.constraints()) {
            Resolver resolver = resolver();
            int impossible = impossible(constraint, resolver);
            if (resolver.problems().isEmpty()) {
                allowed.add(diagram.minus(diagram.all(), impossible));
                ties.tie(resolver.axes());
            }
            found.addAll(resolver.problems());
        }
        this.possible = allOf(allowed);
        diagram.hold(possible);
        diagram.release();
        this.problems = List.copyOf(found);
        this.covering = new Covering(diagram, possible);
    }

    /** Joins neighbours in pairs, so that constraints on neighbouring axes meet before the whole grows large. */
    private int allOf(List<Integer> nodes) {
        return switch (nodes.size()) {
            case 0 -> diagram.all();
            case 1 -> nodes.getFirst();
            default -> {
                int middle = nodes.size() / 2;
                yield diagram.and(allOf(nodes.subList(0, middle)), allOf(nodes.subList(middle, nodes.size())));
            }
        };
    }

    private static int[] sizes(Choices choices) {
        return choices.axes().stream().mapToInt(axis -> axis.members().size()).toArray();
    }

    private int impossible(Constraint constraint, Resolver resolver) {
        return switch (constraint) {
            case Constraint.Never never -> resolver.resolve(never.expression());
            case Constraint.Require require -> {
                int when = resolver.resolve(require.when());
                int then = resolver.resolve(require.then());
                yield resolver.problems().isEmpty() ? diagram.minus(when, then) : Resolver.IGNORED;
            }
        };
    }

    Resolver resolver() {
        return new Resolver(names, diagram);
    }

    Choices choices() {
        return choices;
    }

    List<Problem> problems() {
        return problems;
    }

    int possible() {
        return possible;
    }

    /** Returns the diagram, for holding and releasing what was made in it. */
    Diagram diagram() {
        return diagram;
    }

    int and(int left, int right) {
        return diagram.and(left, right);
    }

    int or(int left, int right) {
        return diagram.or(left, right);
    }

    int minus(int left, int right) {
        return diagram.minus(left, right);
    }

    BigInteger count(int node) {
        return diagram.count(node);
    }

    Work work() {
        return new Work(diagram.nodes(), diagram.operations());
    }

    Set<String> support(int node) {
        Set<String> support = new LinkedHashSet<>();
        for (int axis : covering.support(node)) {
            support.add(choices.axes().get(axis).name());
        }
        return Collections.unmodifiableSet(support);
    }

    String canonical(int node) {
        return diagram.canonical(node);
    }

    Wording wording(int node) {
        if (node == NONE || node == possible) {
            Expression always = new Expression.Always();
            Expression expression = node == NONE ? new Expression.Not(always) : always;
            return new Wording(expression, node == NONE ? 0 : 1, Wording.Proof.LEAST, BigInteger.ZERO);
        }
        BitSet tied = ties.tiedTo(covering.support(node));
        return Sentences.of(covering.cover(node, tied, phrases), phrases, diagram);
    }

    Optional<Assignment> example(int node) {
        return Optional.ofNullable(diagram.first(node)).map(members -> assignment(everyAxis(), members));
    }

    private int[] everyAxis() {
        int[] axes = new int[diagram.axes()];
        for (int axis = 0; axis < axes.length; axis++) {
            axes[axis] = axis;
        }
        return axes;
    }

    private Assignment assignment(int[] axes, int[] members) {
        Map<String, String> named = new LinkedHashMap<>();
        for (int i = 0; i < axes.length; i++) {
            Axis axis = choices.axes().get(axes[i]);
            named.put(axis.name(), axis.members().get(members[i]));
        }
        return new Assignment(named);
    }

    Assignments assignments(int node, Collection<String> wanted, int cap) {
        BitSet others = new BitSet();
        for (int axis = 0; axis < diagram.axes(); axis++) {
            others.set(axis, !wanted.contains(choices.axes().get(axis).name()));
        }
        BitSet kept = new BitSet();
        kept.set(0, diagram.axes());
        kept.andNot(others);
        int[] axes = kept.stream().toArray();
        List<int[]> points = new Walk(diagram, axes).points(diagram.without(node, others), cap);
        List<Assignment> list = points.stream().limit(cap).map(point -> assignment(axes, point)).toList();
        return new Assignments(list, points.size() <= cap);
    }

    int where(Assignment assignment) {
        int node = possible;
        for (Map.Entry<String, String> entry : assignment.members().entrySet()) {
            int axis = choices.axes().stream().map(Axis::name).toList().indexOf(entry.getKey());
            int member = axis < 0 ? -1 : choices.axes().get(axis).members().indexOf(entry.getValue());
            if (member < 0) {
                throw new IllegalArgumentException("no choice: " + entry);
            }
            BitSet members = new BitSet();
            members.set(member);
            node = and(node, diagram.where(axis, members));
        }
        return node;
    }
}
