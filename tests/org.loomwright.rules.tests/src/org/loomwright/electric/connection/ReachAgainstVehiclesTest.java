// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.loomwright.condition.Assignment;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.rules.Bench;
import org.loomwright.rules.Counting;

/** Holds what is computed for all vehicles at once against a search in each single vehicle. */
class ReachAgainstVehiclesTest {

    private static final String[] CONDITIONS = {"", "fan", "not fan", "halogen", "not halogen and fan", "saloon",
        "not coupe", "year <= 1966", "year = 1968 and fan", "relays"};

    private static Connections random(long seed) {
        Random random = new Random(seed);
        Bench bench = new Bench().group("body", "saloon", "coupe", "estate").upgrade("fan", "halogen", "relays")
                .never("coupe and year <= 1965").never("relays and not halogen").place("p", "")
                .part(Part.Kind.HOUSING, "way1", "1")
                .harness("h", wiring -> {
                    for (int i = 0; i < 12; i++) {
                        wiring.connector("J" + i, "way1", "p", i % 4 == 3 ? "J" + (i - 1) : "",
                                CONDITIONS[random.nextInt(CONDITIONS.length)]);
                    }
                    wiring.circuit("1", "", circuit -> {
                        for (int i = 0; i < 16; i++) {
                            circuit.wire("w" + i, "18 ga", "J" + random.nextInt(12), "J" + random.nextInt(12),
                                    CONDITIONS[random.nextInt(CONDITIONS.length)]);
                        }
                    });
                });
        Project project = bench.project();
        PlatformView platform = project.platforms().get("orrin");
        return Connections.of(Fitment.of(project, platform).getFirst());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void reachIsThatOfEachVehicle(long seed) {
        Connections network = random(seed);
        Condition all = network.fitment().domain();
        Point start = new Point.Spot(new Node(Node.Kind.CAVITY, "h", "J0", "1"));
        Reach reach = network.from(Map.of(start, all), edge -> true);
        List<Assignment> vehicles = all.assignments(all.vehicles().choices().axes().stream()
                .map(axis -> axis.name()).toList(), 10_000).list();
        assertTrue(vehicles.size() > 50);
        for (Assignment vehicle : vehicles) {
            Condition one = all.vehicles().where(vehicle);
            Set<Point> reached = search(network, start, one);
            for (int i = 0; i < 12; i++) {
                Point point = new Point.Spot(new Node(Node.Kind.CAVITY, "h", "J" + i, "1"));
                assertEquals(reached.contains(point), one.implies(reach.at(point)), point + " in " + vehicle.words());
            }
        }
    }

    private static Set<Point> search(Connections network, Point start, Condition one) {
        Set<Point> reached = new HashSet<>(Set.of(start));
        Deque<Point> queue = new ArrayDeque<>(List.of(start));
        while (!queue.isEmpty()) {
            Point point = queue.remove();
            for (Edge edge : network.edges()) {
                boolean touches = edge.a().equals(point) || edge.b().equals(point);
                if (touches && one.implies(edge.when()) && reached.add(edge.other(point))) {
                    queue.add(edge.other(point));
                }
            }
        }
        return reached;
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void countingIsThatOfEachVehicle(long seed) {
        Connections network = random(seed);
        Condition all = network.fitment().domain();
        List<Condition> conditions = new ArrayList<>();
        network.edges().forEach(edge -> conditions.add(edge.when()));
        List<Assignment> vehicles = all.assignments(List.of("year", "body", "fan", "halogen", "relays"), 10_000).list();
        for (int least = 0; least <= conditions.size() + 1; least += 3) {
            Condition many = Counting.atLeast(least, conditions, all);
            for (Assignment vehicle : vehicles) {
                Condition one = all.vehicles().where(vehicle);
                assertEquals(conditions.stream().filter(one::implies).count() >= least, one.implies(many));
            }
        }
    }
}
