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
import java.util.function.Predicate;
import org.loomwright.quantity.Cancel;

/**
 * The fewest jumpers along a trunk with slack. Whether a harness fits when certain places need not be reached is asked
 * of the planner.
 *
 * <p>First a choice of places that will do is made smaller until each of them is needed beside the others. Then it is
 * proved, or a better one found: where a choice does not do, there are a few places of which at least one needs a
 * jumper whatever else is done; of all such groups that are known, the fewest places that meet each of them are asked
 * next (implicit hitting sets: Davies and Bacchus, CP 2011). The first that fit are the fewest; until then, no fewer
 * than that do. For each of the two, nothing more is asked after {@value #MOST_PROGRAMS} linear programs or
 * so many questions that they ask of {@value #MOST_ASKED} places.
 */
final class SlackJumpers {

    static final int MOST_PROGRAMS = 10_000;
    /** Questions times places. */
    static final int MOST_ASKED = 6_000_000;
    private static final int MOST_STEPS = 100_000;

    private final PlanProblem problem;
    private final HarnessPlanner given;
    private final Cancel cancel;
    private final List<Jumpers.Waived> all = new ArrayList<>();
    private final Map<String, Integer> asksOf = new HashMap<>();
    private final List<List<Jumpers.Waived>> groups = new ArrayList<>();
    private HarnessPlanner planner;
    private int asked;
    private int steps;
    /** No fewer places meet all groups. */
    private int atLeast;

    /**
     * The places that need jumpers.
     *
     * @param atLeast fewer do not do, proved
     */
    record Found(Set<Jumpers.Waived> waived, int atLeast) {
    }

    /** @param problem of one trunk */
    SlackJumpers(PlanProblem problem, HarnessPlanner planner, Cancel cancel) {
        this.problem = problem;
        this.given = planner;
        this.cancel = cancel;
        problem.trunks().getFirst().stops().stream().flatMap(stop -> stop.branches().stream())
                .filter(Jumpers::mayHave).forEach(branch -> {
                    asksOf.put(branch.name(), branch.asks().size());
                    for (int i = 0; i < branch.asks().size(); i++) {
                        all.add(new Jumpers.Waived(branch.name(), i));
                    }
                });
        begin();
    }

    private void begin() {
        planner = given.counting(new AtomicInteger(), MOST_PROGRAMS);
        asked = 0;
    }

    /**
     * Finds them; empty when jumpers do not help, or when that was not found out and nothing is known.
     *
     * @param known places that will do, as the stiff trunk has them
     */
    Optional<Found> find(Optional<Set<Jumpers.Waived>> known) {
        if (!isSure(Set.copyOf(all), true)) {
            return known.map(each -> new Found(each, 0));
        }
        Optional<Set<Jumpers.Waived>> best = known.or(this::grown).map(each -> Set.copyOf(fewer(all.stream()
                .filter(each::contains).toList(), some -> isSure(new HashSet<>(some), true))));
        begin();
        for (Jumpers.Waived each : all) {
            // whatever else is waived, this place cannot be reached
            if (best.filter(some -> some.contains(each)).isPresent() && isSure(without(List.of(each)), false)) {
                groups.add(List.of(each));
            }
        }
        int most = best.map(Set::size).orElse(Integer.MAX_VALUE);
        while (true) {
            Optional<Set<Jumpers.Waived>> next = hit(most);
            if (next.isEmpty() || isEnough()) {
                return best.map(each -> new Found(each, atLeast));
            }
            Optional<Boolean> fits = fits(next.get());
            if (fits.isEmpty()) {
                return best.map(each -> new Found(each, atLeast));
            }
            if (fits.get()) {
                return Optional.of(new Found(next.get(), atLeast));
            }
            groups.add(group(next.get()));
        }
    }

    private boolean isEnough() {
        return planner.isToEnd() || asked >= MOST_ASKED || steps > MOST_STEPS;
    }

    private Optional<Boolean> fits(Set<Jumpers.Waived> waived) {
        cancel.check();
        asked += all.size();
        return isEnough() ? Optional.empty() : planner.fits(Jumpers.eased(problem, waived), cancel);
    }

    private boolean isSure(Set<Jumpers.Waived> waived, boolean fits) {
        return fits(waived).equals(Optional.of(fits));
    }

    private Set<Jumpers.Waived> without(List<Jumpers.Waived> some) {
        Set<Jumpers.Waived> rest = new HashSet<>(all);
        some.forEach(rest::remove);
        return rest;
    }

    /** Leaves out what need not be there for something that holds, in ever smaller pieces. */
    private List<Jumpers.Waived> fewer(List<Jumpers.Waived> some, Predicate<List<Jumpers.Waived>> holds) {
        List<Jumpers.Waived> kept = some;
        for (int size = Math.max(1, kept.size() / 2); size > 0 && !isEnough(); size = size > 1 ? (size + 1) / 2 : 0) {
            for (int from = 0; from < kept.size() && !isEnough();) {
                List<Jumpers.Waived> less = new ArrayList<>(kept);
                less.subList(from, Math.min(from + size, kept.size())).clear();
                if (holds.test(less)) {
                    kept = less;
                } else {
                    from += size;
                }
            }
        }
        return kept;
    }

    /** Of the places without a jumper, so few that no harness reaches all of them even where it need reach no other. */
    private List<Jumpers.Waived> group(Set<Jumpers.Waived> waived) {
        return fewer(all.stream().filter(each -> !waived.contains(each)).toList(),
                some -> isSure(without(some), false));
    }

    /** Places that will do, from groups of which all places get a jumper; empty when that was not found out. */
    private Optional<Set<Jumpers.Waived>> grown() {
        Set<Jumpers.Waived> grown = new HashSet<>();
        while (true) {
            Optional<Boolean> fits = fits(grown);
            if (fits.isEmpty() || fits.get()) {
                return fits.map(will -> grown);
            }
            List<Jumpers.Waived> group = group(grown);
            groups.add(group);
            int before = grown.size();
            group.stream().filter(each -> mayAlso(each, grown)).forEach(grown::add);
            if (grown.size() == before) {
                return Optional.empty();
            }
        }
    }

    /** Not all places of a branch. */
    private boolean mayAlso(Jumpers.Waived place, Set<Jumpers.Waived> chosen) {
        return chosen.stream().filter(each -> each.branch().equals(place.branch())).count() + 1
                < asksOf.get(place.branch());
    }

    /** The fewest places that meet all groups, fewer than some number, and never all places of a branch. */
    private Optional<Set<Jumpers.Waived>> hit(int below) {
        for (; atLeast < Math.min(below, all.size() + 1); atLeast++) {
            Set<Jumpers.Waived> chosen = new TreeSet<>(Jumpers.Waived.ORDER);
            if (hit(chosen, Set.of(), atLeast)) {
                return Optional.of(chosen);
            }
            if (steps > MOST_STEPS) {
                break;
            }
        }
        return Optional.empty();
    }

    private boolean hit(Set<Jumpers.Waived> chosen, Set<Jumpers.Waived> not, int left) {
        cancel.check();
        steps++;
        List<Jumpers.Waived> smallest = null;
        Set<Jumpers.Waived> met = new HashSet<>();
        int apart = 0;
        for (List<Jumpers.Waived> group : groups) {
            if (group.stream().noneMatch(chosen::contains)) {
                smallest = smallest == null || group.size() < smallest.size() ? group : smallest;
                // groups that have nothing in common need a place each
                if (group.stream().noneMatch(met::contains)) {
                    met.addAll(group);
                    apart++;
                }
            }
        }
        if (smallest == null) {
            return true;
        }
        if (apart > left || steps > MOST_STEPS) {
            return false;
        }
        Set<Jumpers.Waived> passed = new HashSet<>(not);
        for (Jumpers.Waived each : smallest) {
            if (!passed.contains(each) && mayAlso(each, chosen)) {
                chosen.add(each);
                if (hit(chosen, passed, left - 1)) {
                    return true;
                }
                chosen.remove(each);
            }
            passed.add(each);
        }
        return false;
    }
}
