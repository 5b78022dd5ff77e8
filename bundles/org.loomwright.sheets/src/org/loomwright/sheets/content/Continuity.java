// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.loomwright.condition.Cell;
import org.loomwright.condition.Cells;
import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;

/**
 * What conducts in a finished harness, with nothing plugged into it, and what must not.
 *
 * @param checks   pairs of ends that conduct, from one end of each net to every other
 * @param openings neighbours in one housing that must not conduct
 */
public record Continuity(List<Check> checks, List<Opening> openings) {

    /** The most ways in which one net is looked at. */
    private static final int MOST = 1_024;

    /**
     * Two ends that conduct.
     *
     * @param from    where one lead of the meter goes
     * @param to      where the other goes
     * @param wires   the wires between, in order
     * @param ohms    resistance of the conductors at 20 C; empty when a length or size on the way is unknown
     * @param joints  number of crimps and splices on the way
     * @param when    the vehicles
     */
    public record Check(Node from, Node to, List<String> wires, Optional<Double> ohms, int joints, Condition when) {
    }

    /** Two cavities side by side that must not conduct. */
    public record Opening(Node one, Node other, Condition when) {
    }

    /**
     * Follows the pieces of a harness. Grows with the pieces of each net times the ways in which it is made.
     *
     * @throws TooManyCombinations if a net is made in more than 1,024 ways
     */
    public static Continuity of(LaidHarness harness) {
        Map<Node, List<Piece>> at = new TreeMap<>();
        for (Piece piece : harness.pieces()) {
            piece.ends().forEach(end -> at.computeIfAbsent(end.node(), any -> new ArrayList<>()).add(piece));
        }
        at.keySet().removeIf(node -> node.kind() == Node.Kind.NOWHERE);
        Search search = new Search(harness, at);
        Set<Node> seen = new LinkedHashSet<>();
        for (Node start : at.keySet()) {
            if (!seen.contains(start)) {
                Set<Node> net = reachable(start, at, null);
                seen.addAll(net);
                search.net(net);
            }
        }
        return new Continuity(search.checks(), search.openings());
    }

    /** All nodes that pieces lead to, over those of one way, or over all. */
    private static Set<Node> reachable(Node start, Map<Node, List<Piece>> at, Set<Piece> alone) {
        Set<Node> found = new LinkedHashSet<>(Set.of(start));
        Deque<Node> open = new ArrayDeque<>(found);
        while (!open.isEmpty()) {
            Node node = open.poll();
            for (Piece piece : at.getOrDefault(node, List.of())) {
                Node other = piece.other(node).node();
                if ((alone == null || alone.contains(piece)) && at.containsKey(other) && found.add(other)) {
                    open.add(other);
                }
            }
        }
        return found;
    }

    /** The order in which an end is taken for the one that stays connected: plugs before pins, studs last. */
    private static final Comparator<Node> FIRST = Comparator.comparing((Node each) -> switch (each.kind()) {
        case CAVITY -> 0;
        case PIN -> 1;
        case STUD -> 2;
        default -> 3;
    }).thenComparing(Comparator.naturalOrder());

    /** Collects what is found net by net. */
    private static final class Search {

        private record Key(Node from, Node to, List<String> wires, Optional<Double> ohms, int joints) {
        }

        private record Pair(Node one, Node other) {
        }

        private final LaidHarness harness;
        private final Map<Node, List<Piece>> at;
        private final Map<Key, Condition> checks = new LinkedHashMap<>();
        private final Map<Node, Condition> wired = new HashMap<>();
        private final Map<Pair, Condition> joined = new HashMap<>();

        Search(LaidHarness harness, Map<Node, List<Piece>> at) {
            this.harness = harness;
            this.at = at;
            at.forEach((node, pieces) -> wired.put(node, pieces.stream().map(Piece::when)
                    .reduce(harness.vehicles().vehicles().none(), Condition::or)));
        }

        void net(Set<Node> net) {
            List<Piece> pieces = new ArrayList<>(new LinkedHashSet<>(net.stream()
                    .flatMap(node -> at.get(node).stream()).toList()));
            Cells cells = harness.vehicles().split(pieces.stream().map(Piece::when).toList(), MOST);
            if (!cells.complete()) {
                throw new TooManyCombinations("what hangs together at " + net.iterator().next().label()
                        + " is made in more than 1,024 ways; print it for fewer vehicles");
            }
            for (Cell cell : cells.list()) {
                Set<Piece> alone = new LinkedHashSet<>();
                cell.holding().forEach(index -> alone.add(pieces.get(index)));
                Set<Node> left = new LinkedHashSet<>(net);
                while (!left.isEmpty()) {
                    Set<Node> together = reachable(left.iterator().next(), at, alone);
                    left.removeAll(together);
                    List<Node> ends = together.stream().filter(node -> node.kind() != Node.Kind.SPLICE).sorted(FIRST)
                            .toList();
                    if (ends.size() > 1) {
                        check(ends, alone, cell.vehicles());
                    }
                }
            }
        }

        private void check(List<Node> ends, Set<Piece> alone, Condition when) {
            Node from = ends.getFirst();
            Map<Node, Piece> way = new HashMap<>();
            Deque<Node> open = new ArrayDeque<>(List.of(from));
            Set<Node> found = new LinkedHashSet<>(Set.of(from));
            while (!open.isEmpty()) {
                Node node = open.poll();
                for (Piece piece : at.get(node)) {
                    Node other = piece.other(node).node();
                    if (alone.contains(piece) && at.containsKey(other) && found.add(other)) {
                        way.put(other, piece);
                        open.add(other);
                    }
                }
            }
            for (Node to : ends.subList(1, ends.size())) {
                List<String> wires = new ArrayList<>();
                double ohms = 0;
                boolean known = true;
                int joints = 1;
                for (Node node = to; !node.equals(from); node = way.get(node).other(node).node()) {
                    Piece piece = way.get(node);
                    wires.addFirst(piece.wire());
                    known &= piece.ohms().isPresent();
                    ohms += piece.ohms().orElse(0.0);
                    joints++;
                }
                checks.merge(new Key(from, to, wires, known ? Optional.of(ohms) : Optional.empty(), joints), when,
                        Condition::or);
            }
            for (Node one : ends) {
                for (Node other : ends) {
                    if (one.element().equals(other.element()) && one.compareTo(other) < 0) {
                        joined.merge(new Pair(one, other), when, Condition::or);
                    }
                }
            }
        }

        List<Check> checks() {
            return checks.entrySet().stream().map(each -> new Check(each.getKey().from(), each.getKey().to(),
                    each.getKey().wires(), each.getKey().ohms(), each.getKey().joints(), each.getValue()))
                    .sorted(Comparator.comparing(Check::from, FIRST).thenComparing(Check::to, FIRST)).toList();
        }

        List<Opening> openings() {
            List<Opening> openings = new ArrayList<>();
            for (ConnectorView connector : harness.view().connectors().values()) {
                List<Node> cavities = order(connector).stream().map(connector::cavity).filter(at::containsKey).toList();
                for (int i = 1; i < cavities.size(); i++) {
                    Node one = cavities.get(i - 1);
                    Node other = cavities.get(i);
                    Pair pair = one.compareTo(other) < 0 ? new Pair(one, other) : new Pair(other, one);
                    Condition when = wired.get(one).and(wired.get(other));
                    Condition together = joined.get(pair);
                    Condition apart = together == null ? when : when.minus(together);
                    if (!apart.isNever()) {
                        openings.add(new Opening(one, other, apart));
                    }
                }
            }
            return openings;
        }

        /** The cavities in the order of the catalogue, then those that it does not have. */
        private List<String> order(ConnectorView connector) {
            Set<String> names = new LinkedHashSet<>();
            connector.housings().forEach(each -> each.value().pins().stream().map(Part.Pin::name)
                    .forEach(name -> names.add(name.text())));
            at.keySet().stream().filter(node -> node.kind() == Node.Kind.CAVITY
                    && node.element().equals(connector.name())).forEach(node -> names.add(node.pin()));
            return List.copyOf(names);
        }
    }
}
