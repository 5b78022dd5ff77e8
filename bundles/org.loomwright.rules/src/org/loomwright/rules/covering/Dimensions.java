// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Route;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;

/** The dimensions that ways along a tree are sums of. A dimension is known by the spot that it leads to. */
final class Dimensions {

    private final HarnessTree tree;

    Dimensions(HarnessTree tree) {
        this.tree = tree;
    }

    /** The dimensions between the datum and the end of a branch. */
    List<Spot> toEnd(TreeRun branch) {
        List<Spot> all = new ArrayList<>();
        Optional<Spot> at = branch.end();
        while (at.isPresent() && at.get().kind() != Spot.Kind.DATUM) {
            Spot spot = at.get();
            while (spot.links() > 0) {
                all.add(spot);
                spot = before(spot);
            }
            at = tree.run(spot.run()).map(TreeRun::start);
        }
        return all;
    }

    /** The dimensions that the length of a route is made of. */
    List<Spot> along(Route route) {
        List<Spot> all = new ArrayList<>();
        for (Route.Leg leg : route.legs()) {
            Spot a = leg.from();
            Spot b = leg.to();
            while (!a.equals(b)) {
                if (a.links() >= b.links()) {
                    all.add(a);
                    a = before(a);
                } else {
                    all.add(b);
                    b = before(b);
                }
            }
        }
        return all;
    }

    private Spot before(Spot spot) {
        return spot.after().flatMap(tree::breakout).orElseGet(() -> tree.run(spot.run()).orElseThrow().origin());
    }
}
