// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.harness.Ours.Objective;

/**
 * A trunk with slack that has branches on branches. Planned as if it were stiff, which any harness of slack can be laid
 * as; the same without the branches on branches, planned exactly with slack, bounds it from below.
 */
final class TreeWithSlack implements TrunkSearch {

    private final TrunkSearch stiff;
    private final TrunkSearch without;

    TreeWithSlack(TrunkSearch stiff, TrunkSearch without) {
        this.stiff = stiff;
        this.without = without;
    }

    @Override
    public Optional<Boolean> fits() {
        if (stiff.fits().equals(Optional.of(true))) {
            return Optional.of(true);
        }
        return without.fits().filter(fits -> !fits);
    }

    @Override
    public Optional<Excess> leastExcess(List<Objective> before) {
        Optional<Excess> least = without.leastExcess(List.of());
        return stiff.leastExcess(before).map(found -> new Excess(found.value(),
                Math.min(found.value(), least.map(Excess::bound).orElse(Long.MIN_VALUE))));
    }

    @Override
    public Part best(long limit, List<Objective> sums) {
        Part found = stiff.best(limit, sums);
        Map<Objective, Long> gaps = new TreeMap<>();
        // what the branches on branches add is not bounded, so neither are the sums
        sums.forEach(each -> gaps.put(each, Long.MAX_VALUE));
        return new Part(found.stations(), found.lengths(), found.excess(), gaps);
    }

    @Override
    public HarnessPlan.Work work() {
        return stiff.work().plus(without.work());
    }
}
