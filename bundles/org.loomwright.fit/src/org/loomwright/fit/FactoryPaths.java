// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.loomwright.geometry.Distance;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Measure.Provenance;
import org.loomwright.quantity.Length;

/** Reads the ways to places out of the tree of one drawing, with the tolerances of their dimensions. */
final class FactoryPaths {

    private final HarnessTree tree;

    FactoryPaths(HarnessTree tree) {
        this.tree = tree;
    }

    /**
     * The spots where a way leaves each of its runs, from the datum outwards; the last one is its end. A branch that
     * leaves the datum has the datum for its first spot.
     */
    List<Spot> exits(Spot end) {
        List<Spot> exits = new ArrayList<>();
        Spot at = end;
        while (true) {
            exits.add(at);
            TreeRun run = tree.run(at.run()).orElse(null);
            if (run == null || run.depth() == 0 && run.end().isEmpty()) {
                break;
            }
            at = run.start();
        }
        Collections.reverse(exits);
        return exits;
    }

    /** True when every spot of a way has a known station. */
    static boolean isKnown(List<Spot> exits) {
        return exits.stream().allMatch(each -> each.station().isKnown());
    }

    /** The way in figures; all its stations must be known. */
    static VehiclePath path(List<Spot> exits) {
        return new VehiclePath(exits.stream()
                .map(each -> new VehiclePath.Step(each.run(), each.station().length().orElseThrow().nanometres()))
                        .toList());
    }

    /** The wider sides of the tolerances of some stations, each counted once. */
    static Length spread(List<Spot> spots) {
        Set<Spot> seen = new HashSet<>();
        return spots.stream().filter(seen::add).map(each -> FitSettings.wider(each.station().tolerance()))
                .reduce(Length.ZERO, Length::plus);
    }

    /** The chain of stations on the drawing's own runs. */
    static Distance sum(List<Spot> spots) {
        return spots.stream().map(Spot::station).reduce(Distance.ZERO, Distance::plus);
    }

    static Provenance worst(List<Spot> spots) {
        return spots.stream().map(each -> each.station().provenance()).reduce(Provenance.SHEET, Distance::worse);
    }

    /** The dimensions that a station is the sum of: the spots whose last step they are. */
    List<Spot> dimensions(Spot spot) {
        List<Spot> all = new ArrayList<>();
        Optional<Spot> at = Optional.of(spot).filter(each -> each.kind() != Spot.Kind.DATUM);
        while (at.isPresent()) {
            all.add(at.get());
            at = at.get().after().flatMap(tree::breakout);
        }
        return all;
    }
}
