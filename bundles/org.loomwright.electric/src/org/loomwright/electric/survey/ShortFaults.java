// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.loomwright.electric.ampacity.Allowance;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.mode.Engine;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.protection.FeedTree;
import org.loomwright.electric.protection.OpeningTimes;
import org.loomwright.electric.protection.Preece;
import org.loomwright.electric.protection.Protector;
import org.loomwright.electric.protection.Withstand;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.Part;

/**
 * Looks at dead shorts at the far end of every wire that a battery feeds: whether the device nearest before it opens,
 * and whether it can break the greatest current. Opening times are from memory and decide nothing.
 */
public final class ShortFaults implements Inspector {

    private static final String RULE = "short-not-cleared-in-time";

    @Override
    public List<Fault> inspect(OperatingPoint point, Fed fed, Ratings ratings) {
        List<Fault> faults = new ArrayList<>();
        Optional<FeedTree> feeds = point.solved() && point.mode().engine() != Engine.CRANK ? FeedTree.of(point)
                : Optional.empty();
        for (Piece piece : feeds.isPresent() ? point.schematic().pieces() : List.<Piece>of()) {
            int far = point.conducts(piece) ? feeds.get().far(piece) : -1;
            if (far > 0 && piece.role() == Role.WIRE && piece.model() instanceof Model.Copper copper) {
                wire(point, feeds.get(), piece, far, copper, ratings, faults);
            } else if (far > 0 && piece.role().protects()) {
                breaking(feeds.get(), piece, far, faults);
            }
        }
        return faults;
    }

    private static void wire(OperatingPoint point, FeedTree feeds, Piece wire, int far, Model.Copper copper,
            Ratings ratings, List<Fault> faults) {
        List<Piece> devices = feeds.devices(far);
        if (devices.isEmpty() || !feeds.single(devices.getLast())) {
            return;
        }
        Protector device = new Protector(devices.getLast());
        double least = feeds.least(far);
        String draws = "a dead short at the end of wire " + wire.subject().element() + " draws at least "
                + Figure.of(least, 1) + " A";
        if (device.piece().role() == Role.LINK) {
            link(device, least, draws, loop(feeds, least), faults);
        } else if (device.piece().rating() > 0 && least < device.carries()) {
            faults.add(new Fault(RULE, wire, device.carries() / least, draws + ", " + device.words() + " carries "
                    + Figure.of(device.carries()) + " A for ever", List.of(loop(feeds, least),
                            "below what the device carries it never opens: the current flows until the battery is"
                                    + " empty"), advice(least, device)));
        } else if (device.resets() && device.piece().rating() > 0) {
            cycling(point, wire, device, ratings, draws, loop(feeds, least), faults);
        } else if (device.piece().rating() > 0) {
            slow(point, wire, device, least, copper, ratings, draws, loop(feeds, least), faults);
        }
    }

    private static String loop(FeedTree feeds, double least) {
        return Figure.of(least, 1) + " A: a flat battery of " + Figure.of(feeds.flatVolts(), 1) + " V, wires at "
                + Figure.of(FeedTree.HOT) + " C, " + Figure.of(FeedTree.WORN * 1000) + " mohm more in each contact, "
                + Figure.of(FeedTree.BODY_RETURN * 1000) + " mohm back through the body (common practice)";
    }

    private static String advice(double least, Protector device) {
        double most = least / OpeningTimes.OPENS * (device.blow() ? 2 : 1);
        return most >= 1 ? "fit a fuse of at most " + Figure.of(Math.floor(most)) + " A, or a larger or shorter wire"
                : "fit a larger or shorter wire";
    }

    /** A breaker that closes again by itself clears nothing: the wire bears what it cycles at. */
    private static void cycling(OperatingPoint point, Piece wire, Protector device, Ratings ratings, String draws,
            String loop, List<Fault> faults) {
        Optional<Allowance> allowed = ratings.allowed(wire, point.vehicles(), point.currents());
        double lasting = device.lasting();
        if (allowed.filter(each -> lasting > each.sureAmps()).isPresent()) {
            faults.add(new Fault(RULE, wire, Math.min(99, lasting / Math.max(0.1, allowed.get().amps())), draws + "; "
                    + device.words() + " closes again by itself and cycles, with about " + Figure.of(lasting, 1)
                    + " A for ever, the wire may carry " + Figure.of(allowed.get().amps(), 1) + " A", List.of(loop,
                            Figure.of(device.carries()) + " A x " + Figure.of(OpeningTimes.OPENS, 2) + " = "
                                    + Figure.of(lasting, 1) + " A: while it cycles it is as warm as with the current"
                                    + " that opens it (common practice)", allowed.get().derivation()),
                    "fit a fuse or a breaker that stays open, or a larger wire"));
        }
    }

    private static void slow(OperatingPoint point, Piece wire, Protector device, double least, Model.Copper copper,
            Ratings ratings, String draws, String loop, List<Fault> faults) {
        double multiple = least / device.carries();
        double opens = OpeningTimes.slowest(multiple);
        double classC = ratings.around(wire).classC().orElse(Ratings.CLASS);
        double bears = Withstand.seconds(copper.size().areaMm2(), classC, least);
        Optional<Allowance> allowed = ratings.allowed(wire, point.vehicles(), point.currents());
        double limit = ratings.around(wire).shortC().orElse(classC + ConductorFaults.SHORT_TIME);
        boolean lasting = allowed.filter(each -> Ratings.temperature(each, least) <= limit).isPresent();
        if (opens <= Math.min(bears, Withstand.ADIABATIC) || lasting || opens <= bears) {
            return;
        }
        String time = Double.isInfinite(opens) ? "may take half an hour and more to open"
                : "may take " + Figure.of(opens) + " s to open";
        faults.add(new Fault(RULE, device.piece(), Math.min(0.99, 1 / multiple), draws + ", " + Figure.of(multiple, 1)
                + " times what " + device.words() + " carries; it " + time + ", the wire bears it for "
                + Figure.of(bears, 1) + " s", List.of(loop, bears(copper, classC, least, bears)),
                advice(least, device)).rests(OpeningTimes.BASIS));
    }

    private static String bears(Model.Copper copper, double classC, double amps, double seconds) {
        double last = classC <= 105 ? Withstand.PVC : Withstand.CROSS_LINKED;
        return "(" + Figure.of(Withstand.k(classC, last), 0) + " x " + Figure.of(copper.size().areaMm2(), 2)
                + " mm2 / " + Figure.of(amps, 1) + " A)² = " + Figure.of(seconds, 1) + " s from " + Figure.of(classC)
                + " C to " + Figure.of(last) + " C (no heat leaves, IEC 60364-5-54, from memory)";
    }

    /** A link opens for certain above the steady current that melts it bare; below that nobody can say. */
    private static void link(Protector device, double least, String draws, String loop, List<Fault> faults) {
        OptionalDouble section = section(device.piece());
        if (section.isPresent() && least < Preece.ofSection(section.getAsDouble())) {
            double melts = Preece.ofSection(section.getAsDouble());
            faults.add(new Fault(RULE, device.piece(), 0.9 * melts / (melts + least), draws + "; " + device.words()
                    + " melts for certain at " + Figure.of(melts, 0) + " A only", List.of(loop,
                            "10244 x d^1.5, d in inches (Preece, bare copper in still air: an upper bound)"),
                    "fit a smaller link, or a fuse before the thinner wires")
                    .rests("how a link behaves below that current, from memory"));
        }
    }

    private static OptionalDouble section(Piece link) {
        if (link.model() instanceof Model.Copper copper) {
            return OptionalDouble.of(copper.size().areaMm2());
        }
        return link.subject().part().map(Part::sizes).filter(sizes -> sizes.size() == 1)
                .map(sizes -> OptionalDouble.of(sizes.getFirst().size().areaMm2())).orElse(OptionalDouble.empty());
    }

    private static void breaking(FeedTree feeds, Piece piece, int far, List<Fault> faults) {
        Protector device = new Protector(piece);
        double most = feeds.most(far);
        if (device.breaks().isPresent() && most > device.breaks().getAsDouble()) {
            double breaks = device.breaks().getAsDouble();
            Fault fault = new Fault(RULE, piece, most / breaks, device.words() + " breaks at most " + Figure.of(breaks)
                    + " A, a dead short right behind it draws up to " + Figure.of(most, 0) + " A", List.of(
                            "full battery of " + Figure.of(feeds.batteryOhms() * 1000) + " mohm, wires at "
                                    + Figure.of(FeedTree.COLD) + " C, good contacts, machines at their most"),
                    "fit a device that breaks more, or lead the current there by a longer wire");
            faults.add(feeds.batteryStated() ? fault : fault.rests("resistance of a battery that states none, from"
                    + " memory"));
        }
    }
}
