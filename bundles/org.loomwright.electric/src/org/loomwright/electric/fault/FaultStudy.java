// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.fault;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.Alteration;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.point.Trail;
import org.loomwright.electric.protection.FeedTree;
import org.loomwright.electric.protection.OpeningTimes;
import org.loomwright.electric.protection.Protector;
import org.loomwright.electric.protection.Withstand;
import org.loomwright.electric.survey.Awake;
import org.loomwright.electric.survey.Fed;
import org.loomwright.electric.survey.OpenedFaults;
import org.loomwright.electric.thermal.Ratings;

/**
 * What follows when one thing fails in one vehicle and mode. Each failure is one network of its own; wires stay at the
 * temperature that is stated. For one thread; as many solves as there are things that can fail, eight for each contact
 * and up to twelve more for one that has a rating.
 *
 * @param opened what happens when a ground, a strap or a protective device opens; only what changes something
 * @param shorts a dead short at the far end of each wire that is fed
 * @param worn   contacts, the most sensitive first
 */
public record FaultStudy(List<Opened> opened, List<Shorted> shorts, List<Worn> worn) {

    /** A contact that loses this many V is a bad one (a limit for connections in workshop manuals). */
    public static final double BAD_CONTACT = 0.1;
    private static final double DEAD_SHORT = 1e-3;
    private static final int ROUNDS = 8;
    private static final int HEATINGS = 12;

    /**
     * Something that opens.
     *
     * @param piece what opens
     * @param awake what was off and now carries current, with its way
     * @param dark  loads that worked and no longer do
     */
    public record Opened(Piece piece, List<Awake> awake, List<Piece> dark) {
    }

    /**
     * A dead short at the far end of a wire.
     *
     * @param wire    the wire
     * @param least   the least current in A: flat battery, hot wires, worn contacts, return through the body
     * @param most    the greatest: full battery, cold wires, good contacts
     * @param device  the protective device that stands nearest before it; empty when none does
     * @param seconds how long the wire bears the least current
     */
    public record Shorted(Piece wire, double least, double most, Optional<Piece> device, double seconds) {

        /** Returns the least current as a multiple of what the device carries for ever; 0 without device. */
        public double ratio() {
            return device.filter(each -> each.rating() > 0).map(each -> least / new Protector(each).carries())
                    .orElse(0.0);
        }

        /** Returns what can be said of its clearing, for people. Opening times are from memory and decide nothing. */
        public String verdict() {
            if (device.isEmpty()) {
                return "no device before it";
            }
            if (device.get().rating() <= 0) {
                return "not judged: " + device.get().subject().label() + " states no rating";
            }
            return ratio() < 1 ? "never cleared"
                    : ratio() < OpeningTimes.OPENS ? "not cleared for minutes" : "not judged";
        }
    }

    /**
     * A contact and what it takes to make a bad one of it.
     *
     * @param piece the contact
     * @param ohms  the resistance in ohm at which it loses 0.1 V
     * @param now   the voltage in V that it loses in good order
     * @param hot   the least resistance in ohm at which it passes its rating, that is, gives off more heat than in good
     *              order at its rated current; empty where no rating is stated, and where no resistance comes to that
     */
    public record Worn(Piece piece, double ohms, double now, OptionalDouble hot) {

        /** Returns the lesser of the two resistances in ohm: the one at which it is bad. */
        public double bad() {
            return Math.min(ohms, hot.orElse(ohms));
        }

        /** Returns whether it passes its rating before it loses 0.1 V. */
        public boolean byRating() {
            return hot.isPresent() && hot.getAsDouble() < ohms;
        }
    }

    public FaultStudy {
        opened = List.copyOf(opened);
        shorts = List.copyOf(shorts);
        worn = List.copyOf(worn);
    }

    /** Studies one vehicle in one mode. */
    public static FaultStudy of(Schematic schematic, Condition vehicle, Mode mode, Ratings ratings) {
        return new Study(schematic, vehicle, mode, ratings).run();
    }

    private static final class Study {
        private final Schematic schematic;
        private final Condition vehicle;
        private final BitSet holding;
        private final Mode mode;
        private final Ratings ratings;
        private final PointSolver warm;
        private final PointSolver cold;
        private final PointSolver hot;

        Study(Schematic schematic, Condition vehicle, Mode mode, Ratings ratings) {
            this.schematic = schematic;
            this.vehicle = vehicle;
            this.holding = schematic.holding(vehicle);
            this.mode = mode;
            this.ratings = ratings;
            this.warm = new PointSolver(schematic, Optional.empty(), 50);
            this.cold = new PointSolver(schematic, Optional.empty(), FeedTree.COLD);
            this.hot = new PointSolver(schematic, Optional.empty(), FeedTree.HOT);
        }

        FaultStudy run() {
            OperatingPoint good = solve(warm, mode, Alteration.NONE);
            return good.solved() ? new FaultStudy(opened(good), shorts(good), worn(good))
                    : new FaultStudy(List.of(), List.of(), List.of());
        }

        private OperatingPoint solve(PointSolver solver, Mode in, Alteration alteration) {
            return solver.solve(vehicle, holding, in, alteration);
        }

        private List<Opened> opened(OperatingPoint good) {
            Fed fed = new Fed(good);
            List<Opened> all = new ArrayList<>();
            for (Piece piece : schematic.pieces()) {
                if (OpenedFaults.opens(good, piece)) {
                    OperatingPoint bad = solve(warm, mode, Alteration.open(piece.index()));
                    List<Awake> awake = Awake.of(good, fed, bad);
                    List<Piece> dark = new ArrayList<>();
                    for (Piece load : bad.solved() ? schematic.pieces() : List.<Piece>of()) {
                        if (load.role() == Role.LOAD && good.conducts(load)) {
                            if (fed.works(load) && Math.abs(good.share(load)) > 0.5
                                    && Math.abs(bad.share(load)) < 0.3) {
                                dark.add(load);
                            }
                        }
                    }
                    if (!awake.isEmpty() || !dark.isEmpty()) {
                        all.add(new Opened(piece, awake, dark));
                    }
                }
            }
            return all;
        }

        private List<Shorted> shorts(OperatingPoint good) {
            Map<Integer, Double> tired = new HashMap<>();
            for (Piece piece : schematic.pieces()) {
                if (piece.role() == Role.CONTACT || piece.role() == Role.GROUND_JOINT) {
                    tired.put(piece.index(), FeedTree.WORN);
                }
            }
            Mode flat = new Mode(mode.name(), mode.title(), mode.engine(), true, mode.states(), mode.written(),
                    mode.place());
            List<Shorted> all = new ArrayList<>();
            for (Piece piece : schematic.pieces()) {
                if (piece.role() != Role.WIRE || !(piece.model() instanceof Model.Copper copper)
                        || !good.conducts(piece)) {
                    continue;
                }
                double from = good.potential(schematic.from(piece));
                double to = good.potential(schematic.to(piece));
                int far = to <= from ? schematic.to(piece) : schematic.from(piece);
                if (Math.min(from, to) < schematic.nominal() / 2 || far == 0) {
                    continue;
                }
                OperatingPoint most = solve(cold, mode, Alteration.shortAt(far, DEAD_SHORT));
                OperatingPoint least = solve(hot, flat, new Alteration(Set.of(), tired, OptionalInt.of(far),
                        FeedTree.BODY_RETURN, Map.of()));
                double amps = Math.abs(least.amps(piece));
                if (most.solved() && least.solved() && amps > 0.1) {
                    all.add(new Shorted(piece, amps, Math.abs(most.amps(piece)), device(least, piece),
                            Withstand.seconds(copper.size().areaMm2(),
                                    ratings.around(piece).classC().orElse(Ratings.CLASS), amps)));
                }
            }
            return all;
        }

        /** The protective device nearest before a wire on the way of its current. */
        private static Optional<Piece> device(OperatingPoint point, Piece wire) {
            Optional<Piece> nearest = Optional.empty();
            for (Trail.Step step : Trail.of(point, wire).steps()) {
                if (step.piece() == wire) {
                    return nearest;
                }
                nearest = step.piece().role().protects() ? Optional.of(step.piece()) : nearest;
            }
            return nearest;
        }

        private List<Worn> worn(OperatingPoint good) {
            List<Worn> all = new ArrayList<>();
            for (Piece piece : schematic.pieces()) {
                double amps = Math.abs(good.amps(piece));
                if (piece.role().touches() && piece.model() instanceof Model.Fixed fixed && amps > 0.05) {
                    worn(piece, fixed.ohms(), good).ifPresent(all::add);
                }
            }
            all.sort(Comparator.comparingDouble(Worn::bad).thenComparing(each -> each.piece().index()));
            return all;
        }

        /** The resistance at which a contact loses 0.1 V, by iterating R = 0.1 V / I(R). */
        private Optional<Worn> worn(Piece piece, double ohms, OperatingPoint good) {
            double now = Math.abs(good.volts(piece));
            double wanted = BAD_CONTACT / Math.abs(good.amps(piece));
            for (int i = 0; i < ROUNDS && wanted > ohms; i++) {
                OperatingPoint bad = solve(warm, mode, Alteration.resist(piece.index(), wanted - ohms));
                double amps = Math.abs(bad.amps(piece));
                if (!bad.solved() || amps < 1e-6) {
                    return Optional.empty();
                }
                double next = BAD_CONTACT / amps;
                if (Math.abs(next - wanted) < 1e-6 * next) {
                    break;
                }
                wanted = next;
            }
            return Optional.of(new Worn(piece, wanted, now, hot(piece, ohms, good)));
        }

        /**
         * The least resistance R at which I(R)² R is the heat of the rated current in good order. What is asked for is
         * where P / I(R)² - R falls to zero; that is convex, so that secants come to the first such R from below, and
         * there is none when a secant no longer falls.
         */
        private OptionalDouble hot(Piece piece, double ohms, OperatingPoint good) {
            double watts = piece.rating() * piece.rating() * ohms;
            double amps = Math.abs(good.amps(piece));
            if (watts <= 0 || amps >= piece.rating()) {
                return watts <= 0 ? OptionalDouble.empty() : OptionalDouble.of(ohms);
            }
            double before = ohms;
            double beyond = watts / (amps * amps) - ohms;
            double at = ohms + beyond;
            for (int i = 0; i < HEATINGS; i++) {
                OperatingPoint bad = solve(warm, mode, Alteration.resist(piece.index(), at - ohms));
                amps = Math.abs(bad.amps(piece));
                if (!bad.solved() || amps < 1e-6) {
                    return OptionalDouble.empty();
                }
                double left = watts / (amps * amps) - at;
                if (Math.abs(left) < 1e-7 * at) {
                    return OptionalDouble.of(at);
                }
                double slope = (left - beyond) / (at - before);
                if (slope >= 0) {
                    return OptionalDouble.empty();
                }
                before = at;
                beyond = left;
                at -= left / slope;
            }
            return OptionalDouble.empty();
        }
    }
}
