// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.mode.Engine;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.protection.FeedTree;
import org.loomwright.electric.protection.Protector;
import org.loomwright.electric.thermal.Ratings;

/**
 * Looks at fuses and breakers in series: whether the one nearer to a fault opens before one that feeds other loads too.
 * Links have no rating and are left out.
 */
public final class SeriesFaults implements Inspector {

    /** Fuses of one kind open in order for certain when the ratings are that far apart (IEC 60269, from memory). */
    public static final double APART = 1.6;
    private static final String RULE = "not-selective";

    @Override
    public List<Fault> inspect(OperatingPoint point, Fed fed, Ratings ratings) {
        List<Fault> faults = new ArrayList<>();
        Optional<FeedTree> feeds = point.solved() && point.mode().engine() != Engine.CRANK ? FeedTree.of(point)
                : Optional.empty();
        for (Piece piece : feeds.isPresent() ? point.schematic().pieces() : List.<Piece>of()) {
            if (point.conducts(piece) && isRated(piece) && feeds.get().far(piece) > 0) {
                behind(point, feeds.get(), piece, faults);
            }
        }
        return faults;
    }

    private static boolean isRated(Piece piece) {
        return (piece.role() == Role.FUSE || piece.role() == Role.BREAKER) && piece.rating() > 0;
    }

    private static void behind(OperatingPoint point, FeedTree feeds, Piece near, List<Fault> faults) {
        Protector nearer = new Protector(near);
        Set<Piece> own = loads(point, feeds, near);
        if (own.isEmpty()) {
            return;
        }
        for (Piece other : feeds.devices(feeds.far(near))) {
            Protector first = new Protector(other);
            if (other == near || !isRated(other) || !feeds.single(other)
                    || first.carries() >= APART * nearer.carries()) {
                continue;
            }
            Set<Piece> more = new HashSet<>(loads(point, feeds, other));
            more.removeAll(own);
            boolean elsewhere = point.drawn().entrySet().stream().anyMatch(each -> each.getValue() > 0
                    && feeds.way(each.getKey()).contains(other) && !feeds.way(each.getKey()).contains(near));
            if (!more.isEmpty() || elsewhere) {
                report(point, nearer, first, more, faults);
            }
        }
    }

    private static void report(OperatingPoint point, Protector nearer, Protector first, Set<Piece> more,
            List<Fault> faults) {
        boolean sure = first.carries() <= nearer.carries();
        List<String> dark = more.stream().sorted((one, two) -> Integer.compare(one.index(), two.index()))
                .map(each -> each.subject().label()).distinct().limit(4).toList();
        String words = dark.isEmpty() ? "other circuits of the vehicle" : String.join(", ", dark);
        Fault fault = new Fault(RULE, nearer.piece(), nearer.carries() / first.carries(), "a fault behind "
                + nearer.words() + (sure ? " may open " : " is not sure to spare ") + first.words()
                + " before it", List.of(Figure.of(first.carries()) + " A / " + Figure.of(nearer.carries())
                        + " A = " + Figure.of(first.carries() / nearer.carries(), 2)
                        + ", fuses of one kind open in order above " + Figure.of(APART, 1)
                        + " (IEC 60269, from memory)", "goes dark too: " + words),
                "fit the smaller rating nearer to the load, or give this circuit a feed of its own",
                new HashSet<>(List.of(nearer.piece().subject().owner(), first.piece().subject().owner())));
        faults.add(sure ? fault : fault.rests("how far ratings must be apart, from memory"));
    }

    /** The loads that get their current through a device. */
    private static Set<Piece> loads(OperatingPoint point, FeedTree feeds, Piece device) {
        Schematic schematic = point.schematic();
        Set<Piece> loads = new HashSet<>();
        for (Piece load : schematic.pieces()) {
            if ((load.role() == Role.LOAD || load.role() == Role.COIL) && point.conducts(load)) {
                for (int end : new int[] {schematic.from(load), schematic.to(load)}) {
                    if (end > 0 && feeds.way(end).contains(device)) {
                        loads.add(load);
                    }
                }
            }
        }
        return loads;
    }
}
