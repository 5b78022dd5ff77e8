// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.mode.Engine;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.Trail;
import org.loomwright.electric.protection.FeedTree;
import org.loomwright.electric.protection.OpeningTimes;
import org.loomwright.electric.protection.Protector;
import org.loomwright.electric.solve.Element;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.Part;
import org.loomwright.quantity.Dimension;

/**
 * Looks at whether a fuse may open while what it feeds is switched on: cold lamps, all of the fuse together, and each
 * motor that starts while the others run. What the wires of the way lose at that current is allowed for. The fastest
 * opening of a fuse is from memory: what is found is shown, and judges nothing.
 */
public final class StartFaults implements Inspector {

    /** A cold filament takes about this many times its current (engineering basis, from memory). */
    public static final double COLD = 10;
    /** Within this time in s a filament is warm (from memory). */
    public static final double WARM = 0.1;
    /** Within this time in s a small motor has run up (common practice). */
    public static final double RUN_UP = 0.5;
    /** A current that falls evenly to little heats as much as its peak in this share of the time. */
    static final double EVENLY = 1.0 / 3;
    private static final String RULE = "fuse-opens-at-start";

    /** What a load takes when it is switched on, without what its way loses. */
    private record Start(Piece load, double amps, double peak, boolean lamp) {
    }

    @Override
    public List<Fault> inspect(OperatingPoint point, Fed fed, Ratings ratings) {
        List<Fault> faults = new ArrayList<>();
        Optional<FeedTree> feeds = point.solved() && point.mode().engine() != Engine.CRANK ? FeedTree.of(point)
                : Optional.empty();
        if (feeds.isPresent()) {
            Map<Piece, Double> drawn = drawn(point, feeds.get());
            Map<Piece, List<Start>> behind = behind(point, feeds.get(), fed);
            drawn.keySet().forEach(each -> behind.putIfAbsent(each, List.of()));
            behind.forEach((device, loads) -> device(point, new Protector(device), loads,
                    drawn.getOrDefault(device, 0.0), faults));
        }
        return faults;
    }

    /** What loads that are not solved here draw behind each fuse, in A. */
    private static Map<Piece, Double> drawn(OperatingPoint point, FeedTree feeds) {
        Map<Piece, Double> drawn = new LinkedHashMap<>();
        point.drawn().forEach((place, amps) -> feeds.devices(place).stream().filter(each -> amps > 0 && isRated(each))
                .forEach(each -> drawn.merge(each, amps, Double::sum)));
        return drawn;
    }

    private static boolean isRated(Piece device) {
        return device.role() == Role.FUSE && device.rating() > 0;
    }

    /** The loads at work behind each fuse that states a rating. */
    private static Map<Piece, List<Start>> behind(OperatingPoint point, FeedTree feeds, Fed fed) {
        Map<Piece, List<Start>> behind = new LinkedHashMap<>();
        for (Piece load : point.schematic().pieces()) {
            if (load.role() != Role.LOAD || !point.conducts(load) || !fed.works(load)
                    || !(load.model() instanceof Model.Working working)) {
                continue;
            }
            int from = point.schematic().from(load);
            int end = fed.isFed(from) ? from : point.schematic().to(load);
            for (Piece device : feeds.devices(end)) {
                if (isRated(device)) {
                    behind.computeIfAbsent(device, key -> new ArrayList<>()).add(start(point, load, working));
                }
            }
        }
        return behind;
    }

    private static Start start(OperatingPoint point, Piece load, Model.Working working) {
        double amps = Math.abs(point.amps(load));
        boolean lamp = working.element() instanceof Element.Filament;
        double states = load.subject().part().flatMap(part -> part.figure(Part.FigureKind.START))
                .map(Part.Figure::from).filter(each -> each.unit().dimension() == Dimension.CURRENT)
                .map(each -> each.si()).orElse(0.0);
        double share = working.amps() > 0 ? amps / working.amps() : 0;
        return new Start(load, amps, lamp ? COLD * amps : Math.max(amps, states * Math.min(1, share)), lamp);
    }

    private static void device(OperatingPoint point, Protector device, List<Start> loads, double drawn,
            List<Fault> faults) {
        double running = loads.stream().mapToDouble(Start::amps).sum();
        List<Start> lamps = loads.stream().filter(Start::lamp).toList();
        Fault worst = lamps.isEmpty() && drawn == 0 ? null : together(point, device, lamps, running, COLD * drawn);
        for (Start each : loads) {
            Fault fault = each.lamp() || each.peak() <= each.amps() ? null
                    : together(point, device, List.of(each), running, drawn);
            worst = worst == null || fault != null && fault.weight() > worst.weight() ? fault : worst;
        }
        if (worst != null) {
            faults.add(worst);
        }
    }

    /** Some loads of one sort start together while the others run; null where the fuse stands that. */
    private static Fault together(OperatingPoint point, Protector device, List<Start> starting, double running,
            double unsolved) {
        boolean lamp = starting.isEmpty() || starting.getFirst().lamp();
        double seconds = EVENLY * (lamp ? WARM : RUN_UP);
        double others = unsolved + running - starting.stream().mapToDouble(Start::amps).sum();
        double bound = others + starting.stream().mapToDouble(Start::peak).sum();
        if (OpeningTimes.fastest(bound / device.carries()) > seconds) {
            return null; // the ways need not be looked at
        }
        double peak = others + starting.stream().mapToDouble(each -> limited(point, each)).sum();
        double multiple = peak / device.carries();
        double opens = OpeningTimes.fastest(multiple);
        if (opens > seconds) {
            return null;
        }
        String what = unsolved > 0 && lamp ? "cold lamps" : starting.size() > 1 ? starting.size() + " cold lamps"
                : starting.getFirst().load().subject().label();
        Fault fault = new Fault(RULE, device.piece(), Math.min(0.99, seconds / opens / 10), "with " + what
                + (lamp ? " switched on about " : " starting about ") + Figure.of(peak, 0) + " A flow through "
                + device.words() + " at first, which may open it", List.of(
                        Figure.of(peak, 1) + " A / " + Figure.of(device.carries()) + " A = " + Figure.of(multiple, 1)
                                + "; at that it opens after " + Figure.of(opens, 3) + " s at the earliest",
                        lamp ? "a cold filament takes " + Figure.of(COLD) + " times its current, less what its way"
                                + " lets through, and is warm after " + Figure.of(WARM, 1) + " s (from memory)"
                                : "it has run up after " + Figure.of(RUN_UP, 1) + " s (common practice)",
                        "falling evenly, that heats as its peak does in " + Figure.of(seconds, 3) + " s"),
                "fit a fuse of the next size if its wires bear that, or a slower one, or divide the loads")
                .rests(OpeningTimes.FASTEST_BASIS);
        return unsolved > 0 ? fault.inTheWorstCase() : fault;
    }

    /**
     * What a load takes at first: the loss on its way grows with the current, so that k v / p + k d = v + d, with v at
     * the load, d on its way, and p times the current of use in a load that has its full voltage.
     */
    private static double limited(OperatingPoint point, Start start) {
        Trail trail = Trail.of(point, start.load());
        double lost = Math.max(0, trail.feed() + trail.back());
        double volts = Math.abs(point.volts(start.load()));
        double times = start.peak() / start.amps();
        return start.amps() * (volts + lost) / (volts / times + lost);
    }
}
