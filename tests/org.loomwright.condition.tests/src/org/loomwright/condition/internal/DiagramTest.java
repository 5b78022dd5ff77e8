// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Functions of a diagram against sets of points, on axes whose sizes are no powers of two. */
class DiagramTest {
    private static final int[] SIZES = {3, 1, 5, 2, 6};
    private static final int[] EVERY_AXIS = {0, 1, 2, 3, 4};
    private static final int POINTS = 180;

    private final Diagram diagram = new Diagram(SIZES, 100_000);
    private final Walk walk = new Walk(diagram, EVERY_AXIS);

    private static int[] point(int index) {
        int[] point = new int[SIZES.length];
        int rest = index;
        for (int axis = SIZES.length - 1; axis >= 0; axis--) {
            point[axis] = rest % SIZES[axis];
            rest /= SIZES[axis];
        }
        return point;
    }

    private int function(BitSet points) {
        int node = Diagram.NONE;
        for (int index = points.nextSetBit(0); index >= 0; index = points.nextSetBit(index + 1)) {
            node = diagram.or(node, diagram.where(Cube.of(walk.shape(), point(index)), EVERY_AXIS));
        }
        return node;
    }

    private static BitSet random(Random random) {
        BitSet points = new BitSet();
        int share = 1 + random.nextInt(POINTS);
        for (int index = 0; index < POINTS; index++) {
            points.set(index, random.nextInt(POINTS) < share);
        }
        return points;
    }

    private void means(BitSet points, int node) {
        List<String> expected = new ArrayList<>();
        points.stream().forEach(index -> expected.add(List.of(point(index)[0], point(index)[2], point(index)[3],
                point(index)[4]).toString()));
        List<String> found = new ArrayList<>();
        for (int[] point : walk.points(node, POINTS)) {
            found.add(List.of(point[0], point[2], point[3], point[4]).toString());
        }
        assertEquals(expected, found);
        assertEquals(points.cardinality(), diagram.count(node).intValue());
        assertEquals(function(points), node);
        if (points.isEmpty()) {
            assertNull(diagram.first(node));
        } else {
            assertArrayEquals(point(points.nextSetBit(0)), diagram.first(node));
        }
    }

    @Test
    void operationsAreThoseOfSets() {
        Random random = new Random(1);
        for (int i = 0; i < 30; i++) {
            BitSet left = random(random);
            BitSet right = random(random);
            BitSet both = (BitSet) left.clone();
            both.and(right);
            means(both, diagram.and(function(left), function(right)));
            BitSet either = (BitSet) left.clone();
            either.or(right);
            means(either, diagram.or(function(left), function(right)));
            BitSet rest = (BitSet) left.clone();
            rest.andNot(right);
            means(rest, diagram.minus(function(left), function(right)));
            diagram.release();
        }
        BitSet every = new BitSet();
        every.set(0, POINTS);
        means(every, diagram.all());
    }

    @Test
    void axesCanBeLeftOut() {
        Random random = new Random(2);
        for (int i = 0; i < 30; i++) {
            BitSet points = random(random);
            BitSet axes = new BitSet();
            axes.set(random.nextInt(SIZES.length));
            axes.set(random.nextInt(SIZES.length));
            BitSet expected = new BitSet();
            for (int index = 0; index < POINTS; index++) {
                int[] wanted = point(index);
                expected.set(index, points.stream().anyMatch(other -> agree(wanted, point(other), axes)));
            }
            means(expected, diagram.without(function(points), axes));
        }
    }

    private static boolean agree(int[] one, int[] other, BitSet except) {
        for (int axis = 0; axis < one.length; axis++) {
            if (!except.get(axis) && one[axis] != other[axis]) {
                return false;
            }
        }
        return true;
    }

    @Test
    void cubesOfAFunctionArePartsOfItThatDoNotMeet() {
        Random random = new Random(3);
        for (int i = 0; i < 30; i++) {
            BitSet points = random(random);
            int node = function(points);
            List<Cube> cubes = walk.cubes(node, POINTS);
            int together = Diagram.NONE;
            for (Cube cube : cubes) {
                int part = diagram.where(cube, EVERY_AXIS);
                assertEquals(Diagram.NONE, diagram.and(together, part));
                assertTrue(walk.meets(node, cube));
                together = diagram.or(together, part);
            }
            assertEquals(node, together);
        }
    }

    @Test
    void hullsAreTheSmallestCubes() {
        Random random = new Random(4);
        for (int i = 0; i < 30; i++) {
            BitSet points = new BitSet();
            points.set(random.nextInt(POINTS));
            points.set(random.nextInt(POINTS));
            points.set(random.nextInt(POINTS));
            Cube expected = points.stream().mapToObj(index -> Cube.of(walk.shape(), point(index)))
                    .reduce(Cube::hull).orElseThrow();
            assertEquals(expected, walk.hull(function(points)));
        }
    }

    @Test
    void axesOfMoreThan64MembersHaveSeveralWords() {
        Diagram wide = new Diagram(new int[] {200, 70}, 100_000);
        BitSet members = new BitSet();
        members.set(3);
        members.set(130, 200);
        int node = wide.where(0, members);
        assertEquals(71 * 70, wide.count(node).intValue());
        Walk both = new Walk(wide, new int[] {0, 1});
        Cube hull = both.hull(node);
        assertEquals(members, hull.members(0));
        assertTrue(hull.isFull(1));
        assertEquals(node, wide.where(hull, new int[] {0, 1}));
    }

    @Test
    void aFullTableThrowsAndLosesNothing() {
        int[] sizes = new int[40];
        Arrays.fill(sizes, 2);
        Diagram small = new Diagram(sizes, 12_000);
        BitSet yes = new BitSet();
        yes.set(1);
        int kept = small.and(small.where(0, yes), small.where(39, yes));
        small.hold(kept);
        assertThrows(NodeLimit.class, () -> {
            int pairs = Diagram.NONE;
            for (int axis = 0; axis < 20; axis++) {
                pairs = small.or(pairs, small.and(small.where(axis, yes), small.where(axis + 20, yes)));
            }
        });
        small.release();
        assertEquals(1L << 38, small.count(kept).longValue());
        assertEquals(kept, small.and(small.where(39, yes), small.where(0, yes)));
    }
}
