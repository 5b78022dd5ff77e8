// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import org.loomwright.quantity.Cancel;

/**
 * The fewest jumpers along a trunk with slack. Whether a harness fits when certain places need not be reached is asked
 * of the planner. Where it does not, there are a few places of which at least one needs a jumper whatever else is done;
 * of all such groups that are known, the fewest places that meet each of them are asked next (implicit hitting sets:
 * Davies and Bacchus, CP 2011). The first that fit are the fewest. Each question is one to the planner, and after
 * {@value #MOST_PROGRAMS} linear programs in all nothing more is asked.
 */
final class SlackJumpers {

    /** After so many the best that is known is taken, without a proof. */
    static final int MOST_PROGRAMS = 5_000;
    private static final int MOST_STEPS = 200_000;

    private final PlanProblem problem;
    private final HarnessPlanner planner;
    private final Cancel cancel;
    private final List<Jumpers.Waived> all = new ArrayList<>();
    private final Map<String, Integer> asksOf = new HashMap<>();
    private final List<List<Jumpers.Waived>> groups = new ArrayList<>();
    private final AtomicInteger programs = new AtomicInteger();
    private int steps;
    private boolean isOpen;

    /**
     * The places that need jumpers.
     *
     * @param fewest true when fewer do not do, proved
     */
    record Found(Set<Jumpers.Waived> waived, boolean fewest) {
    }

    /** @param problem of one trunk */
    SlackJumpers(PlanProblem problem, HarnessPlanner planner, Cancel cancel) {
        this.problem = problem;
        this.planner = planner.counting(programs, MOST_PROGRAMS);
        this.cancel = cancel;
        problem.trunks().getFirst().stops().stream().flatMap(stop -> stop.branches().stream())
                .filter(Jumpers::mayHave).forEach(branch -> {
                    asksOf.put(branch.name(), branch.asks().size());
                    for (int i = 0; i < branch.asks().size(); i++) {
                        all.add(new Jumpers.Waived(branch.name(), i));
                    }
                });
    }

    /**
     * Finds them; empty when jumpers do not help, or when that was not found out and nothing is known.
     *
     * @param known places that will do, as the stiff trunk has them
     */
    Optional<Found> find(Optional<Set<Jumpers.Waived>> known) {
        if (!fits(Set.copyOf(all))) {
            return known.map(each -> new Found(each, false));
        }
        while (true) {
            cancel.check();
            Optional<Set<Jumpers.Waived>> next = hit(known.map(Set::size).orElse(Integer.MAX_VALUE));
            if (isEnough()) {
                return known.map(each -> new Found(each, false));
            }
            if (next.isEmpty()) {
                // none is smaller than what is known
                return known.map(each -> new Found(each, !isOpen));
            }
            if (fits(next.get())) {
                return Optional.of(new Found(next.get(), !isOpen));
            }
            groups.add(group(next.get()));
        }
    }

    private boolean isEnough() {
        return programs.get() >= MOST_PROGRAMS || steps > MOST_STEPS;
    }

    private boolean fits(Set<Jumpers.Waived> waived) {
        Optional<Boolean> fits = planner.fits(Jumpers.eased(problem, waived), cancel);
        isOpen |= fits.isEmpty();
        return fits.orElse(false);
    }

    /** Of the places without a jumper, so few that no harness reaches all of them even where it need reach no other. */
    private List<Jumpers.Waived> group(Set<Jumpers.Waived> waived) {
        List<Jumpers.Waived> kept = new ArrayList<>(all);
        kept.removeAll(waived);
        for (int size = kept.size() / 2; size > 0 && !isEnough(); size = size > 1 ? (size + 1) / 2 : 0) {
            for (int from = 0; from < kept.size();) {
                List<Jumpers.Waived> fewer = new ArrayList<>(kept);
                fewer.subList(from, Math.min(from + size, kept.size())).clear();
                Set<Jumpers.Waived> without = new HashSet<>(all);
                without.removeAll(fewer);
                if (fewer.isEmpty() || fits(without)) {
                    from += size;
                } else {
                    kept = fewer;
                }
            }
        }
        return kept;
    }

    /** The fewest places that meet all groups, fewer than some number, and never all places of a branch. */
    private Optional<Set<Jumpers.Waived>> hit(int below) {
        for (int most = 0; most < Math.min(below, all.size() + 1); most++) {
            Set<Jumpers.Waived> chosen = new TreeSet<>(Jumpers.Waived.ORDER);
            if (hit(chosen, most)) {
                return Optional.of(chosen);
            }
            if (steps > MOST_STEPS) {
                break;
            }
        }
        return Optional.empty();
    }

    private boolean hit(Set<Jumpers.Waived> chosen, int left) {
        steps++;
        List<Jumpers.Waived> open = groups.stream().filter(group -> group.stream().noneMatch(chosen::contains))
                .findFirst().orElse(null);
        if (open == null) {
            return true;
        }
        if (left == 0 || steps > MOST_STEPS) {
            return false;
        }
        for (Jumpers.Waived each : open) {
            if (chosen.stream().filter(other -> other.branch().equals(each.branch())).count() + 1
                    < asksOf.get(each.branch())) {
                chosen.add(each);
                if (hit(chosen, left - 1)) {
                    return true;
                }
                chosen.remove(each);
            }
        }
        return false;
    }
}
