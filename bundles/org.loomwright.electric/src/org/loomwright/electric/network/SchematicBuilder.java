// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Protection;
import org.loomwright.electric.connection.Supply;
import org.loomwright.geometry.CutLength;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Dimension;

/** Builds a schematic: edges of the connections first, then what works in them. One object for each. */
final class SchematicBuilder {

    private final Connections connections;
    private final Map<String, Part> parts;
    private final Map<String, Layout> layouts;
    private final List<Piece> pieces = new ArrayList<>();
    private final List<Remark> remarks = new ArrayList<>();
    private final Map<Point, Integer> uses = new HashMap<>();
    private final Set<String> tips = new HashSet<>();
    private final double nominal;

    SchematicBuilder(Connections connections, Map<String, Part> parts, Map<String, Layout> layouts) {
        this.connections = connections;
        this.parts = parts;
        this.layouts = layouts;
        this.nominal = connections.fitment().platform().platform().supply()
                .map(each -> Math.abs(each.voltage().si())).filter(each -> each > 0).orElse(12.0);
    }

    Schematic build() {
        for (Edge edge : connections.edges()) {
            if (!(edge.link() instanceof Link.Mated)) {
                uses.merge(edge.a(), 1, Integer::sum);
                uses.merge(edge.b(), 1, Integer::sum);
            }
        }
        List<Boundary> boundaries = Boundary.of(connections);
        DevicePieces devices = new DevicePieces(this, connections, nominal);
        devices.add(boundaries.stream().anyMatch(each -> each.kind() == Boundary.Kind.FEED));
        for (Edge edge : connections.edges()) {
            edge(edge);
        }
        new AssumedPieces(this, connections, nominal).add(boundaries, reference());
        return new Schematic(connections.fitment(), pieces, remarks, reference(), nominal, layouts, boundaries);
    }

    /** The ground node of the first battery, else the pole of it that is not insulated, else the first ground node. */
    private Junction reference() {
        for (Supply supply : connections.supplies()) {
            if (DevicePieces.isBattery(supply)) {
                Optional<Point> ground = ground(supply);
                if (ground.isPresent() || !supply.returns().isEmpty()) {
                    return Junction.at(ground.orElseGet(() -> supply.returns().getFirst()));
                }
            }
        }
        return connections.grounds().keySet().stream().findFirst().map(Junction::at)
                .orElse(new Junction.Tip("", "nothing is ground", true));
    }

    private Optional<Point> ground(Supply supply) {
        return supply.device().device().grounded().map(each -> (Point) new Point.Ground(
                connections.fitment().platform().name(), each.text())).filter(connections.grounds()::containsKey);
    }

    /** Notes that something ends at a point, so that a contact that leads there is not a stub. */
    void uses(Point point) {
        uses.merge(point, 1, Integer::sum);
    }

    void add(Junction from, Junction to, Condition when, Role role, Subject subject, Gate gate, Model model,
            double rating, String basis) {
        if (!when.isNever() && !from.equals(to)) {
            pieces.add(new Piece(pieces.size(), from, to, when, role, subject, gate, model, rating, basis));
        }
    }

    void remark(Subject subject, Condition when, String words) {
        if (!when.isNever()) {
            remarks.add(new Remark(subject, when, words));
        }
    }

    private void edge(Edge edge) {
        switch (edge.link()) {
            case Link.OfWire wire -> wire(edge, wire);
            case Link.Mated mated -> contact(edge);
            case Link.Inside inside -> inside(edge, inside);
            case Link.Bolted bolted -> add(Junction.at(edge.a()), Junction.at(edge.b()), edge.when(),
                    Role.GROUND_JOINT, spot(edge.a(), "ground joint "), Gate.ALWAYS, new Model.Fixed(Usual.BOLTED), 0,
                    "common practice");
            case Link.Strapped strapped -> {
                Optional<Double> ohms = strapped.strap().resistance().map(each -> each.si());
                Subject subject = new Subject(connections.fitment().platform().name(), strapped.strap().name().text(),
                        "strap " + strapped.strap().name().text(), strapped.strap().span(), Optional.empty(),
                        Optional.empty(), Optional.empty());
                if (ohms.filter(each -> each <= 0).isPresent()) {
                    remark(subject, edge.when(), "a strap has a resistance; " + Usual.STRAP * 1000
                            + " mohm are taken in place of " + strapped.strap().resistance().get());
                }
                add(Junction.at(edge.a()), Junction.at(edge.b()), edge.when(), Role.STRAP, subject, Gate.ALWAYS,
                        new Model.Fixed(ohms.filter(each -> each > 0).orElse(Usual.STRAP)), 0,
                        ohms.isPresent() ? "stated" : "common practice");
            }
        }
    }

    Subject spot(Point point, String sort) {
        String owner = point instanceof Point.Spot spot ? spot.node().owner() : ((Point.Ground) point).platform();
        String element = point instanceof Point.Spot spot ? spot.node().element() : ((Point.Ground) point).name();
        Span place = Span.NONE;
        if (point instanceof Point.Spot spot && connections.fitment().fitted().containsKey(owner)) {
            var view = connections.fitment().fitted().get(owner).view();
            place = spot.node().kind() == Node.Kind.CAVITY && view.connectors().containsKey(element)
                    ? view.connectors().get(element).connector().name().span()
                    : spot.node().kind() == Node.Kind.STUD && view.studs().containsKey(element)
                            ? view.studs().get(element).stud().name().span() : Span.NONE;
        }
        return new Subject(owner, element, sort + point, place, Optional.empty(),
                Optional.empty(), Optional.empty());
    }

    /** A mated pair of cavities; one behind which nothing hangs on either side is left out. */
    private void contact(Edge edge) {
        if (uses.getOrDefault(edge.a(), 0) > 0 && uses.getOrDefault(edge.b(), 0) > 0) {
            add(Junction.at(edge.a()), Junction.at(edge.b()), edge.when(), Role.CONTACT,
                    spot(edge.a(), "contact "), Gate.ALWAYS, new Model.Fixed(Terminals.least(connections, parts, edge,
                            Part.FigureKind.RESISTANCE, Dimension.RESISTANCE).orElse(Usual.CONTACT)),
                    Terminals.least(connections, parts, edge, Part.FigureKind.RATING, Dimension.CURRENT).orElse(0.0),
                    "from memory");
        }
    }

    private void wire(Edge edge, Link.OfWire link) {
        WireView wire = link.wire();
        Subject subject = new Subject(wire.owner(), wire.label(), "wire " + wire.label(), wire.wire().span(),
                Optional.of(wire), Optional.empty(), link.cable());
        Junction from = tip(edge.a(), wire, true, edge.when(), subject);
        Junction to = tip(edge.b(), wire, false, edge.when(), subject);
        Optional<Double> whole = link.cable().filter(part -> part.kind() == Part.Kind.RESISTOR_CABLE)
                .flatMap(part -> LoadModels.figure(part, Part.FigureKind.RESISTANCE, Dimension.RESISTANCE));
        Role role = edge.protection() == Protection.LINK ? Role.LINK : Role.WIRE;
        if (whole.isPresent()) {
            add(from, to, edge.when(), role, subject, Gate.ALWAYS, new Model.Fixed(whole.get()), 0, "stated");
            return;
        }
        Condition sizeless = edge.when();
        for (Case<ConductorSize> size : wire.sizes()) {
            Condition sized = edge.when().and(size.when());
            sizeless = sizeless.minus(size.when());
            Condition rest = sized;
            for (CutLength length : layouts.get(wire.owner()).lengths(wire)) {
                Condition here = rest.and(length.when());
                if (!here.isNever() && length.length().isPresent() && length.from().equals(link.from().node())
                        && length.to().equals(link.to().node())) {
                    copper(from, to, here, role, subject, size.value(), length.length().get().nanometres() * 1e-9);
                    rest = rest.minus(here);
                }
            }
            if (!rest.isNever()) {
                remark(subject, rest, "nobody states how long it is; " + (int) Usual.LENGTH + " m is taken");
                add(from, to, rest, role, subject, Gate.ALWAYS, new Model.Copper(size.value(), Usual.LENGTH, true), 0,
                        "length not stated");
            }
        }
        if (!sizeless.isNever()) {
            remark(subject, sizeless, "it has no size; it is left out of all currents");
        }
    }

    private void copper(Junction from, Junction to, Condition when, Role role, Subject subject, ConductorSize size,
            double metres) {
        if (metres < Usual.LEAST_LENGTH) {
            remark(subject, when, "it is no longer than nothing; 1 mm is taken");
        }
        add(from, to, when, role, subject, Gate.ALWAYS,
                new Model.Copper(size, Math.max(metres, Usual.LEAST_LENGTH), false), 0, size.basis());
    }

    /** The end of a wire: the point itself, or ahead of the terminal on a pin or stud a junction of its own. */
    private Junction tip(Point point, WireView wire, boolean start, Condition when, Subject subject) {
        boolean terminal = point instanceof Point.Spot spot
                && (spot.node().kind() == Node.Kind.PIN || spot.node().kind() == Node.Kind.STUD);
        if (!terminal) {
            return Junction.at(point);
        }
        Junction.Tip tip = new Junction.Tip(wire.owner(), wire.label(), start);
        if (tips.add(tip + " " + wire.owner() + " " + point + " " + start + " " + when.hashCode())) {
            boolean stud = ((Point.Spot) point).node().kind() == Node.Kind.STUD;
            add(tip, Junction.at(point), when, stud ? Role.GROUND_JOINT : Role.CONTACT,
                    new Subject(subject.owner(), subject.element(), (stud ? "ring of " : "terminal of ")
                            + subject.element() + " at " + point, subject.place(), subject.wire(), Optional.empty(),
                            Optional.empty()),
                    Gate.ALWAYS, new Model.Fixed(stud ? Usual.BOLTED : Usual.CONTACT), 0,
                    stud ? "common practice" : "from memory");
        }
        return tip;
    }

    private void inside(Edge edge, Link.Inside inside) {
        Link.Holder holder = inside.holder();
        Part part = inside.part();
        Optional<Double> stated = inside.join().flatMap(Part.Join::through)
                .filter(each -> each.unit().dimension() == Dimension.RESISTANCE).map(each -> each.si());
        Optional<Double> rating = inside.join().flatMap(Part.Join::through)
                .filter(each -> each.unit().dimension() == Dimension.CURRENT).map(each -> each.si())
                .or(() -> LoadModels.figure(part, Part.FigureKind.RATING, Dimension.CURRENT));
        String pins = inside.join().filter(join -> part.joins().size() > 1)
                .map(join -> ", " + join.from().text() + " to " + join.to().text()).orElse("");
        Subject subject = new Subject(holder.owner(), holder.name().text(), holder.name().text() + pins,
                holder.name().span(), Optional.empty(), Optional.empty(), Optional.of(part));
        Optional<Double> own = stated.or(() -> LoadModels.figure(part, Part.FigureKind.RESISTANCE,
                Dimension.RESISTANCE));
        Role role = role(edge, part);
        double usual = switch (role) {
            case FUSE, BREAKER -> rating.map(amps -> Usual.FUSE_DROP / amps).orElse(Usual.FUSE);
            case LINK -> link(part);
            case SWITCH, RELAY_CONTACT -> part.kind() == Part.Kind.FLASHER ? Usual.FLASHER : Usual.SWITCH;
            default -> Usual.INSIDE;
        };
        if (own.filter(each -> each <= 0).isPresent()) {
            remark(subject, edge.when(), "a connection has a resistance; " + usual * 1000
                    + " mohm are taken in place of 0");
        }
        add(Junction.at(edge.a()), Junction.at(edge.b()), edge.when(), role, subject, gate(holder, part,
                inside.join()), new Model.Fixed(own.filter(each -> each > 0).orElse(usual)),
                rating.orElse(0.0), own.isPresent() ? "stated" : "from memory");
    }

    private static double link(Part part) {
        return part.sizes().stream().findFirst().map(size -> size.size().ohmPerMetre20()
                * LoadModels.figure(part, Part.FigureKind.LENGTH, Dimension.LENGTH).orElse(0.15)).orElse(Usual.FUSE);
    }

    private static Role role(Edge edge, Part part) {
        return switch (edge.protection()) {
            case FUSE -> Role.FUSE;
            case BREAKER -> Role.BREAKER;
            case LINK -> Role.LINK;
            case NONE -> switch (part.kind()) {
                case SWITCH, FLASHER -> Role.SWITCH;
                case RELAY -> Role.RELAY_CONTACT;
                default -> Role.INSIDE;
            };
        };
    }

    private static Gate gate(Link.Holder holder, Part part, Optional<Part.Join> join) {
        if (join.isEmpty() || join.get().states().isEmpty()) {
            return Gate.ALWAYS;
        }
        String rest = part.states().isEmpty() ? "" : part.states().getFirst().text();
        Set<String> states = new HashSet<>();
        join.get().states().forEach(each -> states.add(each.text()));
        return new Gate.While(holder.owner(), holder.name().text(), rest, states, part.kind() == Part.Kind.RELAY);
    }
}
