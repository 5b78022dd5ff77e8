// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.loomwright.condition.Cell;
import org.loomwright.condition.Cells;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;

/**
 * The wires that a written harness lacks. Of each circuit of the draft, what hangs together without any end that ours
 * has is one piece; it is joined to ours where the drawing joins it: at the splice of the same neighbours, else at an
 * end of the circuit that ours has. A piece that touches nothing of ours is a circuit of its own.
 */
final class TakenWires {

    private static final int MOST_CELLS = 1_000;

    private final TakingOver job;
    private final Twins twins;
    private final TakenRuns runs;
    private final NameBook circuits = new NameBook();
    private final Map<Circuit, NameBook> letters = new HashMap<>();
    private final TakenParts parts;

    /** A wire to write: its ends as they are called in ours. */
    private record Lead(String from, String to, WireView wire) {

        boolean touches(Lead other) {
            return Stream.of(from, to).anyMatch(end -> end.equals(other.from) || end.equals(other.to));
        }
    }

    /** A wire of the draft between two of its ends in some vehicles. */
    private record Edge(Node from, Node to, Condition when, WireView wire) {

        boolean touches(Node node) {
            return from.equals(node) || to.equals(node);
        }

        Node other(Node node) {
            return from.equals(node) ? to : from;
        }
    }

    TakenWires(TakingOver job, Twins twins, TakenRuns runs) {
        this.job = job;
        this.twins = twins;
        this.runs = runs;
        this.parts = new TakenParts(job, runs);
        job.ours().wiring().circuits().forEach(each -> circuits.take(each.name().text()));
    }

    /**
     * Adds them.
     *
     * @param lacking the ends that ours lacks, and in which vehicles
     * @param called  what those of them that are cavities are called now
     */
    void take(Map<Node, Condition> lacking, Map<Node, Map<String, Condition>> called) {
        for (Circuit circuit : job.draft().wiring().circuits()) {
            List<Edge> edges = edges(circuit);
            if (edges.stream().anyMatch(edge -> lacking.containsKey(edge.from) || lacking.containsKey(edge.to))) {
                new OneCircuit(circuit, edges, lacking, called).take();
            }
        }
    }

    private List<Edge> edges(Circuit circuit) {
        List<Edge> edges = new ArrayList<>();
        for (WireView wire : job.draft().wires()) {
            if (wire.circuit() == circuit) {
                for (Case<Node> from : wire.from()) {
                    for (Case<Node> to : wire.to()) {
                        Condition when = wire.when().and(from.when()).and(to.when());
                        if (!when.isNever()) {
                            edges.add(new Edge(from.value(), to.value(), when, wire));
                        }
                    }
                }
            }
        }
        return edges;
    }

    private static double area(WireView wire) {
        return wire.sizes().stream().mapToDouble(each -> each.value().areaMm2()).max().orElse(0);
    }

    /** One circuit of the draft. */
    private final class OneCircuit {

        private final Circuit circuit;
        private final List<Edge> edges;
        private final Map<Node, Condition> lacking;
        private final Map<Node, Map<String, Condition>> called;
        private final Map<Lead, Condition> leads = new LinkedHashMap<>();
        private final Map<Lead, Set<Circuit>> homes = new HashMap<>();
        private final Map<Node, String> newSplices = new LinkedHashMap<>();

        OneCircuit(Circuit circuit, List<Edge> edges, Map<Node, Condition> lacking,
                Map<Node, Map<String, Condition>> called) {
            this.circuit = circuit;
            this.edges = edges;
            this.lacking = lacking;
            this.called = called;
        }

        void take() {
            List<Condition> conditions = new ArrayList<>(edges.stream().map(Edge::when).toList());
            List<Condition> wanted = edges.stream().flatMap(edge -> Stream.of(edge.from, edge.to)).distinct()
                    .filter(lacking::containsKey).map(lacking::get).toList();
            conditions.addAll(wanted);
            Cells cells = job.cover().whole.vehicles().anyOf(wanted).split(conditions.stream().distinct().toList(),
                    MOST_CELLS);
            for (Cell cell : cells.list()) {
                new InVehicles(cell.vehicles()).take();
            }
            if (!cells.complete()) {
                job.choose(Choice.Kind.LEFT, "circuit " + circuit.name().text(), "differs between more"
                        + " than " + MOST_CELLS + " kinds of vehicle; look through it yourself");
            }
            Map<Optional<Circuit>, Map<Lead, Condition>> byHome = new LinkedHashMap<>();
            for (Map<Lead, Condition> group : groups()) {
                Condition own = job.cover().whole.vehicles().anyOf(group.values());
                Optional<Circuit> home = group.keySet().stream().flatMap(lead -> homes.getOrDefault(lead, Set.of())
                        .stream()).filter(each -> own.implies(when(each))).findFirst();
                byHome.computeIfAbsent(home, key -> new LinkedHashMap<>()).putAll(group);
            }
            byHome.forEach(this::write);
        }

        /** Leads by the splices that they have in common, since a splice is of one circuit. */
        private List<Map<Lead, Condition>> groups() {
            List<Map<Lead, Condition>> groups = new ArrayList<>();
            leads.forEach((lead, when) -> {
                Map<Lead, Condition> group = new LinkedHashMap<>(Map.of(lead, when));
                for (Map<Lead, Condition> other : List.copyOf(groups)) {
                    if (other.keySet().stream().anyMatch(each -> newSplices.containsValue(each.from) && each.touches(
                            lead) || newSplices.containsValue(each.to) && each.touches(lead))) {
                        groups.remove(other);
                        other.putAll(group);
                        group = other;
                    }
                }
                groups.add(group);
            });
            return groups;
        }

        private Condition when(Circuit circuit) {
            return job.ours().circuits().stream().filter(view -> view.circuit() == circuit).findFirst().orElseThrow()
                    .when().and(job.cover().whole);
        }

        /** The circuit in vehicles of one kind, in which each end is there or is not. */
        private final class InVehicles {

            private final Condition vehicles;
            private final List<Edge> here;
            private final Map<Node, Node> splices = new HashMap<>();

            InVehicles(Condition vehicles) {
                this.vehicles = vehicles;
                this.here = edges.stream().filter(edge -> vehicles.implies(edge.when)).toList();
            }

            void take() {
                Set<Node> nodes = new LinkedHashSet<>();
                here.forEach(edge -> nodes.addAll(List.of(edge.from, edge.to)));
                nodes.stream().filter(node -> node.kind() == Node.Kind.SPLICE).forEach(node -> splice(node).ifPresent(
                        same -> splices.put(node, same)));
                Set<Node> seen = new HashSet<>();
                for (Node start : nodes) {
                    if (isLacking(start) && !seen.contains(start)) {
                        Set<Node> piece = piece(start);
                        seen.addAll(piece);
                        take(piece);
                    }
                }
            }

            private boolean isLacking(Node node) {
                return lacking.containsKey(node) && vehicles.implies(lacking.get(node));
            }

            /** Our splice with most of the neighbours of one of the draft. */
            private Optional<Node> splice(Node theirs) {
                Set<Node> around = new HashSet<>();
                here.stream().filter(edge -> edge.touches(theirs)).forEach(edge -> around.addAll(twins.of(edge.other(
                        theirs), vehicles).keySet()));
                Node best = null;
                long most = 0;
                for (WiringView.SpliceView each : job.ours().splices().values()) {
                    Node node = each.node();
                    long shared = !vehicles.implies(each.when()) ? 0 : job.ours().wires().stream()
                            .filter(wire -> vehicles.implies(wire.when()) && Twins.endsAt(wire, node))
                            .flatMap(wire -> Stream.concat(wire.from().stream(), wire.to().stream()))
                            .filter(end -> vehicles.implies(end.when())).map(Case::value).distinct()
                            .filter(around::contains).count();
                    if (shared > most) {
                        most = shared;
                        best = node;
                    }
                }
                return Optional.ofNullable(best);
            }

            private boolean isNew(Node node) {
                return switch (node.kind()) {
                    case SPLICE -> !splices.containsKey(node);
                    case STUD -> twins.of(node, vehicles).isEmpty();
                    case PIN -> node.owner().equals(job.draft().name()) ? twins.of(node, vehicles).isEmpty()
                            : isLacking(node);
                    default -> isLacking(node);
                };
            }

            /** What hangs together with an end without any that ours has. */
            private Set<Node> piece(Node start) {
                Set<Node> piece = new LinkedHashSet<>(List.of(start));
                List<Node> open = new ArrayList<>(piece);
                while (!open.isEmpty()) {
                    Node node = open.removeFirst();
                    here.stream().filter(edge -> edge.touches(node)).map(edge -> edge.other(node)).filter(this::isNew)
                            .filter(piece::add).forEach(open::add);
                }
                return piece;
            }

            private void take(Set<Node> piece) {
                List<Edge> all = new ArrayList<>();
                Edge border = null;
                for (Edge edge : here) {
                    boolean from = piece.contains(edge.from);
                    boolean to = piece.contains(edge.to);
                    if (from && to) {
                        all.add(edge);
                    } else if ((from || to) && (border == null || rank(known(edge, piece)) < rank(known(border,
                            piece)))) {
                        // ours joins what the others lead to by itself
                        border = edge;
                    }
                }
                if (border != null) {
                    all.add(border);
                }
                straighten(piece, all);
                for (Edge edge : all) {
                    lead(edge, known(edge, piece));
                }
            }

            private static Node known(Edge edge, Set<Node> piece) {
                return piece.contains(edge.from) ? piece.contains(edge.to) ? null : edge.to : edge.from;
            }

            /** Splices first, then ground, then other wiring, then what is at the end of a branch. */
            private int rank(Node known) {
                return switch (known.kind()) {
                    case SPLICE -> 0;
                    case STUD -> 1;
                    case CAVITY -> job.draft().connectors().get(known.element()).mates().stream().anyMatch(each -> each
                            .value().device()) ? 3 : 2;
                    default -> 4;
                };
            }

            /** A splice of two wires is none, and one of a single wire leads nowhere. */
            private void straighten(Set<Node> piece, List<Edge> all) {
                for (Node splice : piece.stream().filter(node -> node.kind() == Node.Kind.SPLICE).toList()) {
                    List<Edge> at = all.stream().filter(edge -> edge.touches(splice)).toList();
                    if (at.size() < 3) {
                        all.removeAll(at);
                    }
                    if (at.size() == 2) {
                        Edge one = at.get(0);
                        Edge other = at.get(1);
                        all.add(new Edge(one.other(splice), other.other(splice), one.when, area(one.wire) >= area(other
                                .wire) ? one.wire : other.wire));
                    }
                }
            }

            private void lead(Edge edge, Node known) {
                called(edge.from).forEach((from, fromWhen) -> called(edge.to).forEach((to, toWhen) -> {
                    Condition when = vehicles.and(fromWhen).and(toWhen);
                    if (!when.isNever()) {
                        Lead lead = new Lead(from, to, edge.wire);
                        leads.merge(lead, when, Condition::or);
                        if (known != null) {
                            home(known, when).ifPresent(each -> homes.computeIfAbsent(lead,
                                    key -> new LinkedHashSet<>()).add(each));
                            shared(known, known.equals(edge.from) ? from : to);
                        }
                    }
                }));
            }

            private void shared(Node known, String name) {
                Choice choice = new Choice(Choice.Kind.LEFT, name, "holds one wire more; crimp both into one terminal,"
                        + " or splice them");
                if (known.kind() == Node.Kind.CAVITY && !job.choices().contains(choice)) {
                    job.choices().add(choice);
                }
            }

            /** The circuit of ours that the wires at an end belong to. */
            private Optional<Circuit> home(Node known, Condition when) {
                Node node = known.kind() == Node.Kind.SPLICE ? splices.get(known)
                        : twins.of(known, when).keySet().stream().findFirst().orElse(known);
                return job.ours().wires().stream()
                        .filter(wire -> Twins.endsAt(wire, node) && !wire.when().excludes(when))
                        .max(Comparator.comparing(wire -> when.implies(wire.when()))).map(WireView::circuit);
            }

            /** What an end of the draft is called in ours, and in which vehicles. */
            private Map<String, Condition> called(Node node) {
                Map<String, Condition> all = new LinkedHashMap<>();
                if (node.kind() == Node.Kind.SPLICE) {
                    all.put(Optional.ofNullable(splices.get(node)).map(Node::element).orElseGet(() -> newSplices
                            .computeIfAbsent(node, key -> job.names().take(node.element()))), vehicles);
                    return all;
                }
                twins.of(node, vehicles).forEach((own, in) -> all.put(own.label(), in));
                called.getOrDefault(node, Map.of()).forEach((name, in) -> all.merge(name, in.and(vehicles),
                        Condition::or));
                if (all.isEmpty()) {
                    all.put(switch (node.kind()) {
                        case STUD -> parts.stud(node.element(), vehicles);
                        case PIN -> (node.owner().equals(job.draft().name()) ? parts.device(node.element())
                                : node.element()) + (node.pin().isEmpty() ? "" : ":" + node.pin());
                        default -> node.label();
                    }, vehicles);
                }
                return all;
            }
        }

        private void write(Optional<Circuit> home, Map<Lead, Condition> all) {
            Condition any = job.cover().whole.vehicles().anyOf(all.values());
            Condition own = home.map(this::when).orElse(any);
            NameBook book = home.map(each -> letters.computeIfAbsent(each, TakenWires::wires)).orElseGet(NameBook::new);
            List<String> lines = new ArrayList<>();
            String colour = home.isEmpty() ? colour(circuit) : "";
            newSplices.forEach((node, name) -> {
                Condition when = job.cover().whole.vehicles().anyOf(all.entrySet().stream()
                        .filter(each -> each.getKey().from.equals(name) || each.getKey().to.equals(name))
                        .map(Map.Entry::getValue).toList());
                if (!when.isNever()) {
                    lines.add(splice(node, name, when, own));
                }
            });
            String number = home.map(each -> each.name().text()).orElseGet(() -> circuits.take(circuit.name().text()));
            String from = job.drawings(any);
            all.forEach((lead, when) -> lines.add(wire(lead, book) + job.cover().when(when, own)));
            job.choose(Choice.Kind.PARTIAL, "circuit " + number, all.size() + (all.size() == 1 ? " wire"
                    : " wires") + " taken over from " + from);
            if (home.isPresent()) {
                lines.addFirst("// Taken over from " + from + ".");
                job.additions().into(home.get().span(), lines);
                return;
            }
            Block block = new Block(job.cover(), own, "circuit " + number + Block.quoted(circuit.title()) + colour);
            if (!number.equals(circuit.name().text())) {
                job.drawings().stream().filter(view -> !view.when().excludes(own))
                        .filter(view -> view.wiring().circuits().stream()
                                .anyMatch(each -> each.name().text().equals(circuit.name().text())))
                        .forEach(view -> block.line("stands for " + circuit.name().text() + " of " + view.name()));
            }
            lines.forEach(block::line);
            StringBuilder text = new StringBuilder("// Taken over from " + from + ".\n");
            block.write("", job.cover().whole, text);
            job.additions().after(job.ours().wiring().circuits().isEmpty()
                    ? job.ours().wiring().runs().getLast().span() : job.ours().wiring().circuits().getLast().span(),
                    text.toString().lines().toList());
        }

        private String wire(Lead lead, NameBook book) {
            WireView wire = lead.wire;
            String size = wire.sizes().stream().max(Comparator.comparingDouble(each -> each.value().areaMm2()))
                    .map(each -> " " + each.value().written()).orElse("");
            String cable = wire.wire().cables().stream().findFirst().map(each -> " cable " + each.value()).orElse("");
            String colour = wire.wire().colours().stream().findFirst().map(each -> " " + each.value()).orElse("");
            return "wire " + book.letter(wire.wire().name().text()) + size + colour + " from " + lead.from + " to "
                    + lead.to + cable;
        }

        private String splice(Node node, String name, Condition when, Condition own) {
            WiringView.SpliceView view = job.draft().splices().get(node.element());
            String at = view.splice().at().point().or(() -> view.splice().at().run()).map(Ref::text).map(point -> runs
                    .point(point)).orElse("");
            return "splice " + name + " at " + at + view.splice().method().map(ref -> " by " + ref).orElse("")
                    + job.cover().when(when, own);
        }
    }

    private static String colour(Circuit circuit) {
        return circuit.colours().stream().findFirst().map(each -> " " + each.value()).orElse("");
    }

    private static NameBook wires(Circuit circuit) {
        NameBook book = new NameBook();
        circuit.wires().forEach(each -> book.take(each.name().text()));
        return book;
    }
}
