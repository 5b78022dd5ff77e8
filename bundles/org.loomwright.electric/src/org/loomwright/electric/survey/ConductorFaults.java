// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.electric.ampacity.Allowance;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.ampacity.Gauges;
import org.loomwright.electric.mode.Engine;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.protection.FeedTree;
import org.loomwright.electric.protection.OpeningTimes;
import org.loomwright.electric.protection.Protector;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.Part;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Dimension;

/** Looks at what conductors, fuses, contacts and relays carry, held against what they may. */
public final class ConductorFaults implements Inspector {

    /** What a fuse carries for longer than ten minutes, as a share of its rating (common practice). */
    public static final double LASTING = 0.80;
    /** Short-time limit above the class of an insulation, in K (ISO 6722-1, from memory). */
    public static final double SHORT_TIME = 50;

    @Override
    public List<Fault> inspect(OperatingPoint point, Fed fed, Ratings ratings) {
        List<Fault> faults = new ArrayList<>();
        for (OperatingPoint.Trouble trouble : point.troubles()) {
            if (trouble.piece() >= 0) {
                Piece coil = point.schematic().pieces().get(trouble.piece());
                faults.add(new Fault("relay-undecided", coil, 2, trouble.words(), List.of(),
                        "give its coil a feed of its own"));
            }
        }
        if (!point.solved()) {
            return faults;
        }
        for (Piece piece : point.schematic().pieces()) {
            double amps = Math.abs(point.amps(piece));
            if (point.conducts(piece) && amps > 1e-3) {
                switch (piece.role()) {
                    case WIRE -> wire(point, piece, amps, ratings, faults);
                    case FUSE, BREAKER -> fuse(point, piece, amps, faults);
                    case SWITCH, RELAY_CONTACT -> contact(piece, amps, faults);
                    case CONTACT -> terminal(piece, amps, faults);
                    case COIL -> coil(point, piece, faults);
                    default -> { }
                }
            }
        }
        return faults;
    }

    private static void wire(OperatingPoint point, Piece piece, double amps, Ratings ratings, List<Fault> faults) {
        if (!(piece.model() instanceof Model.Copper copper) || point.mode().engine() == Engine.CRANK) {
            return;
        }
        Optional<Allowance> free = ratings.free(piece);
        if (free.isEmpty() || ratings.around(piece).classC().isEmpty() || free.get().amps() == 0) {
            return;
        }
        if (amps <= 0.3 * free.get().amps()) {
            return;
        }
        Allowance allowed = ratings.allowed(piece, point.vehicles(), point.currents()).orElseThrow();
        double limit = ratings.around(piece).shortC().orElse(allowed.rating() + SHORT_TIME);
        double celsius = allowed.temperature(amps);
        if (celsius > limit) {
            faults.add(new Fault("wire-too-hot", piece, celsius / limit, "wire " + piece.subject().element() + " of "
                    + copper.size() + " gets hotter than the " + Figure.of(limit, 0) + " C that its insulation stands"
                    + " for a short time", List.of(allowed.derivation(), "T = " + Figure.of(allowed.ambientC(), 0)
                            + " + (" + allowed.rating() + " - " + Figure.of(allowed.ambientC(), 0) + ") x ("
                            + Figure.of(amps, 1) + " / " + Figure.of(allowed.amps(), 1) + ")² = "
                            + Figure.of(celsius, 0) + " C"),
                    larger(point, piece, copper, allowed, amps, ratings) + ": this one is destroyed in normal use"));
        } else if (amps > allowed.sureAmps()) {
            faults.add(new Fault("wire-overloaded", piece, amps / allowed.amps(), "wire " + piece.subject().element()
                    + " of " + copper.size() + " carries " + Figure.of(amps, 1) + " A, it may carry "
                    + Figure.of(allowed.amps(), 1) + " A", List.of(allowed.derivation(),
                            "counted in its bundle: the wire and each neighbour that carries more than 20 % of its own"
                                    + " figure"), larger(point, piece, copper, allowed, amps, ratings)
                                    + ", or lead it where it is cooler or less crowded"));
        }
    }

    /** The smallest gauge that bears the current, and the fuse before the wire, in the same bundle. */
    private static String larger(OperatingPoint point, Piece piece, Model.Copper copper, Allowance allowed,
            double amps, Ratings ratings) {
        Optional<Piece> device = FeedTree.of(point).filter(each -> each.far(piece) > 0)
                .map(each -> each.devices(each.far(piece))).filter(list -> !list.isEmpty()).map(List::getLast)
                .filter(each -> each.role() != Role.LINK && each.rating() > 0);
        double lasting = device.map(each -> new Protector(each).lasting()).orElse(0.0);
        double factor = allowed.ambient().value() * allowed.bundle().value();
        double base = Math.max(amps, lasting) / factor;
        Optional<ConductorSize> least = factor <= 0 ? Optional.empty() : Gauges.smallest(copper.size().system(),
                size -> ratings.base(piece, size).filter(each -> each >= base).isPresent());
        String with = lasting > amps ? ", which bears " + new Protector(device.get()).words() + " before it too" : "";
        return least.map(size -> "fit a wire of at least " + size + with).orElse("no gauge bears this where it is:"
                + " take a cable of a higher class, or divide the current");
    }

    private static void fuse(OperatingPoint point, Piece piece, double amps, List<Fault> faults) {
        if (piece.rating() <= 0 || point.mode().engine() == Engine.CRANK) {
            return;
        }
        boolean blow = piece.subject().part().flatMap(part -> part.word(Part.WordKind.BASIS))
                .filter("blow"::equals).isPresent();
        double carries = blow ? piece.rating() / 2 : piece.rating();
        if (amps > LASTING * carries) {
            faults.add(new Fault("fuse-too-small-for-load", piece, amps / carries, "fuse " + piece.subject().label()
                    + " of " + Figure.of(piece.rating()) + " A carries " + Figure.of(amps, 1) + " A",
                    List.of(Figure.of(carries) + " A x 0.80 (loads that run for more than ten minutes, common"
                            + " practice) = " + Figure.of(LASTING * carries, 1) + " A"
                            + (blow ? "; its rating is the current that blows it, it carries half" : "")),
                    "fit a fuse of at least " + Figure.of(Math.ceil(amps / LASTING * (blow ? 2 : 1)))
                            + " A if its wires bear that, else divide the loads"));
        }
    }

    private static void contact(Piece piece, double amps, List<Fault> faults) {
        Optional<Part> part = piece.subject().part();
        if (part.filter(each -> each.kind() == Part.Kind.FLASHER).isPresent()) {
            flasher(piece, part.get(), amps, faults);
        } else if (piece.rating() > 0 && amps > piece.rating()) {
            faults.add(new Fault("contact-overloaded", piece, amps / piece.rating(), "contact "
                    + piece.subject().label() + " of " + Figure.of(piece.rating()) + " A carries "
                    + Figure.of(amps, 1) + " A", List.of(), "let a relay carry the load"));
        }
    }

    private static void flasher(Piece piece, Part part, double amps, List<Fault> faults) {
        Optional<Part.Figure> window = part.figure(Part.FigureKind.CURRENT)
                .filter(each -> each.from().unit().dimension() == Dimension.CURRENT && each.upTo().isPresent());
        if (window.isPresent()) {
            double least = window.get().from().si();
            double most = window.get().upTo().orElseThrow().si();
            if (amps < least || amps > most) {
                faults.add(new Fault("flasher-load-out-of-range", piece, amps < least ? least / amps : amps / most,
                        "flasher " + piece.subject().element() + " has " + Figure.of(amps, 2) + " A to flash, it works"
                                + " with " + Figure.of(least, 1) + " to " + Figure.of(most, 1) + " A", List.of(),
                        "fit a flasher for these lamps; an electronic one needs a ground wire"));
            }
        }
    }

    private static void terminal(Piece piece, double amps, List<Fault> faults) {
        if (piece.rating() > 0 && amps > piece.rating()) {
            faults.add(new Fault("terminal-overloaded", piece, amps / piece.rating(), piece.subject().label() + " of "
                    + Figure.of(piece.rating()) + " A carries " + Figure.of(amps, 1) + " A", List.of(),
                    "fit a larger terminal, or share the current between two ways"));
        }
    }

    private static void coil(OperatingPoint point, Piece piece, List<Fault> faults) {
        double volts = Math.abs(point.volts(piece));
        PointSolver limits = new PointSolver(point.schematic(), Optional.empty(), 20);
        double pullIn = limits.pullIn(piece);
        boolean pulled = point.relays().getOrDefault(piece.subject().owner() + ":" + piece.subject().element(), false);
        if (!pulled && volts >= limits.dropOut(piece) && volts < pullIn) {
            faults.add(new Fault("relay-undecided", piece, volts / pullIn, "relay " + piece.subject().element()
                    + " gets " + Figure.of(volts, 1) + " V: too little to pull in for certain, enough to stay pulled",
                    List.of("it pulls in at " + Figure.of(pullIn, 1) + " V with a coil of 80 C"),
                    "give its coil the full supply"));
        }
    }
}
