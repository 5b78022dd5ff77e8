// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.Trail;
import org.loomwright.harness.Limit;

/**
 * A load that is off and carries current, or a relay that pulls in, once something else has opened.
 *
 * @param load  the load, or the coil of the relay
 * @param share the share of its design current that it carries then
 * @param way   the way of that current from the source to ground, through other loads, in words
 */
public record Awake(Piece load, double share, String way) {

    /**
     * Returns what wakes, what carries most first. Loads that are declared to return through others are left out.
     *
     * @param good the operating point with everything in order
     * @param fed  what is joined in it
     * @param bad  the same with something open
     */
    public static List<Awake> of(OperatingPoint good, Fed fed, OperatingPoint bad) {
        List<Awake> awake = new ArrayList<>();
        double limit = good.schematic().fitment().platform().limits().si(Limit.SNEAK);
        for (Piece piece : bad.solved() ? good.schematic().pieces() : List.<Piece>of()) {
            boolean asked = piece.role() == Role.LOAD && !LoadFaults.returns(piece) || piece.role() == Role.COIL;
            if (asked && bad.conducts(piece) && !fed.works(piece)) {
                double before = good.conducts(piece) ? Fed.currentShare(good, piece) : 0;
                double after = Fed.currentShare(bad, piece);
                boolean wakes = piece.role() == Role.COIL ? pulls(bad, piece) && !pulls(good, piece)
                        : before <= limit && after > limit;
                if (wakes) {
                    awake.add(new Awake(piece, after, LoadFaults.way(Trail.throughLoads(bad, piece))));
                }
            }
        }
        awake.sort(Comparator.comparingDouble((Awake each) -> -each.share())
                .thenComparing(each -> each.load().index()));
        return awake;
    }

    private static boolean pulls(OperatingPoint point, Piece coil) {
        return point.relays().getOrDefault(coil.subject().owner() + ":" + coil.subject().element(), false);
    }

    /** Returns what it does, for people: {@code Left park lamp carries 43 %}. */
    public String words() {
        return load.role() == Role.COIL ? "relay " + load.subject().element() + " pulls in"
                : load.subject().label() + " carries " + LoadFaults.percent(share) + " of its current";
    }
}
