// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.Locale;
import java.util.function.Predicate;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Protection;
import org.loomwright.electric.connection.Reach;
import org.loomwright.electric.connection.Supply;
import org.loomwright.harness.Part;

/**
 * Where current gets to without any protection, in one network, and which wires feed the cranking motor or the ignition
 * coil alone. Asked by the rules about unfused runs and about fusible links; see {@link
 * org.loomwright.rules.Target.OfNetwork#derived}.
 */
final class OpenFeeds {

    /** Connections that protect nothing. */
    static final Predicate<Edge> OPEN = edge -> edge.protection() == Protection.NONE;
    /** Sources that do not limit their own current. */
    static final Predicate<Supply> UNLIMITED = supply -> !UnfusedRuns.selfLimited(supply);

    private final Connections connections;
    private final Reach bare;
    private final SoleFeed cranking;
    private final SoleFeed ignition;

    OpenFeeds(Connections connections) {
        this.connections = connections;
        this.bare = connections.fed(UNLIMITED, OPEN);
        this.cranking = new SoleFeed(connections, part -> type(part).equals("cranking")
                || type(part).equals("starter"), pin -> !isStarterControl(pin), UNLIMITED);
        this.ignition = new SoleFeed(connections, part -> type(part).equals("ignitioncoil"), UNLIMITED);
    }

    /** Whether a pin takes the control current of the solenoid: terminal 50 of DIN 72552 (from memory). */
    private static boolean isStarterControl(Point pin) {
        return pin instanceof Point.Spot spot && spot.node().pin().equals("50");
    }

    private static String type(Part part) {
        return part.word(Part.WordKind.TYPE).orElse("").toLowerCase(Locale.ROOT);
    }

    /** The network. */
    Connections connections() {
        return connections;
    }

    /** What an unlimited source feeds with nothing between that protects. */
    Reach bare() {
        return bare;
    }

    /** What feeds cranking motors. */
    SoleFeed cranking() {
        return cranking;
    }

    /** What feeds ignition coils. */
    SoleFeed ignition() {
        return ignition;
    }
}
