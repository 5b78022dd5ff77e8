// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.geometry.Copper;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.NodeSpots;
import org.loomwright.geometry.Route;
import org.loomwright.geometry.RoutedWire;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.link.Case;
import org.loomwright.quantity.ConductorSize;

/**
 * How heavy each stretch of a harness is by the metre, in mg/m: the copper of all wires that lead through it in any
 * vehicle, each as thick as it is in any, and its covering. A wire that ends within a stretch counts for all of it.
 */
final class Weights {

    /** Tape or sleeve; without it copper would be the same wherever a breakout stands before its station. */
    private static final long COVERING = 1_000;
    private static final double MG_PER_G = 1_000;

    private final HarnessTree tree;
    private final Map<String, long[]> stretches = new HashMap<>();

    Weights(HarnessTree tree) {
        this.tree = tree;
        tree.runs().forEach(run -> stretches.put(run.name(), fill(run.points().size())));
        for (RoutedWire wire : RoutedWire.all(tree, NodeSpots.of(tree))) {
            long weight = wire.wire().sizes().stream().map(Case::value).mapToLong(Weights::of).max().orElse(0);
            wire.routes().stream().flatMap(each -> each.route().legs().stream()).distinct()
                    .forEach(leg -> add(leg, weight));
        }
    }

    private static long[] fill(int count) {
        long[] weights = new long[count];
        Arrays.fill(weights, COVERING);
        return weights;
    }

    private void add(Route.Leg leg, long weight) {
        TreeRun run = tree.run(leg.run()).orElseThrow();
        double from = index(run, leg.from());
        double to = index(run, leg.to());
        long[] weights = stretches.get(leg.run());
        for (int i = (int) Math.floor(Math.min(from, to)); i < Math.ceil(Math.max(from, to)); i++) {
            weights[i] += weight;
        }
    }

    /** 0 for the start of a run, 1 for its first point; between two for a station between two. */
    private static double index(TreeRun run, Spot spot) {
        List<Spot> spots = run.spots();
        int known = spots.indexOf(spot);
        if (known >= 0) {
            return known;
        }
        int before = 0;
        for (int i = 0; i < spots.size(); i++) {
            if (spots.get(i).station().length().filter(length -> spot.station().length()
                    .filter(at -> length.compareTo(at) <= 0).isPresent()).isPresent()) {
                before = i;
            }
        }
        return Math.min(before + 0.5, spots.size() - 1);
    }

    /** The stretch that ends at a point of a run, by its index among the points. */
    long before(String run, int point) {
        return stretches.get(run)[point];
    }

    /** The last stretch of a branch. */
    long last(String branch) {
        long[] all = stretches.get(branch);
        return all[all.length - 1];
    }

    private static long of(ConductorSize size) {
        return Math.round(MG_PER_G * Copper.HANDBOOK.gramsPerMetre(size));
    }
}
