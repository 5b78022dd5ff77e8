// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/**
 * The fewest harnesses that serve all drawings between them.
 *
 * <p>What fits some drawings fits fewer of them, so two that no harness serves together are never in one group. The
 * largest set found of drawings of which no two go together is the proof from below; a way to put all into so many
 * groups the proof from above. Between the two, numbers are tried one after the other, each exhaustively.
 *
 * <p>Exact, and exponential in the worst case; each question whether a set fits is asked once. So nothing more is tried
 * of a number, or of a set, after so much work, and then it is said that the number is not proved.
 */
public final class FewestHarnesses {

    /** What a set of drawings may take, in linear programs. */
    static final int MOST_PROGRAMS = 20_000;
    /** How many sets are asked about for one number of harnesses. */
    private static final int MOST_ASKED = 5_000;
    private static final int MOST_STEPS = 1_000_000;

    private final PlanProblem problem;
    private final List<BitSet> drawings;
    private final Cancel cancel;
    private final Progress progress;
    private final HarnessPlanner planner;
    private final Map<BitSet, Optional<Boolean>> known = new HashMap<>();
    private final BitSet[] apart;
    private final int mostAsked;
    /** So many sets may be known before a number is given up, and so many steps may be taken. */
    private int askedAtMost;
    private int steps;
    private boolean isExhausted = true;
    /** Sets that were planned: those that fit, and those that do not. */
    private final List<BitSet> fitting = new ArrayList<>();
    private final List<BitSet> quarrelling = new ArrayList<>();

    /**
     * The answer.
     *
     * @param groups  the drawings of each harness, by index; a drawing that no harness fits is in none
     * @param alone   drawings that no harness fits, by index
     * @param unclear drawings of which it was not found out whether a harness fits, by index; they are in no group
     * @param apart   drawings of which no two go together, by index: so many harnesses are needed at least
     * @param asked   how many different sets were tried
     * @param open    of how many of these it was not found out whether a harness fits; they were taken as ones that
     *                none fits
     * @param exhausted true when every way to make do with fewer was tried
     */
    public record Answer(List<List<Integer>> groups, List<Integer> alone, List<Integer> unclear, List<Integer> apart,
            int asked, int open, boolean exhausted) {

        public Answer {
            groups = List.copyOf(groups);
            alone = List.copyOf(alone);
            unclear = List.copyOf(unclear);
            apart = List.copyOf(apart);
        }

        /** True when it is proved that no fewer harnesses serve what they serve. */
        public boolean isFewest() {
            return isClique() || open == 0 && exhausted;
        }

        /** True when the number is proved from below by drawings of which no two go together. */
        public boolean isClique() {
            return apart.size() == groups.size();
        }
    }

    private FewestHarnesses(PlanProblem problem, List<BitSet> drawings, HarnessPlanner planner, int mostAsked,
            Cancel cancel, Progress progress) {
        this.mostAsked = mostAsked;
        this.progress = progress;
        this.planner = planner;
        this.problem = problem;
        this.drawings = drawings;
        this.cancel = cancel;
        this.apart = new BitSet[drawings.size()];
    }

    /**
     * Finds them.
     *
     * @param drawings the vehicles of each drawing, by their numbers
     */
    public static Answer of(PlanProblem problem, List<BitSet> drawings, HarnessPlanner planner, Cancel cancel) {
        return of(problem, drawings, planner, cancel, Progress.NONE);
    }

    /** The same, telling how many sets of drawings were tried. */
    public static Answer of(PlanProblem problem, List<BitSet> drawings, HarnessPlanner planner, Cancel cancel,
            Progress progress) {
        return of(problem, drawings, planner, MOST_ASKED, cancel, progress);
    }

    /** The same with so many sets at most to ask about for one number of harnesses. */
    static Answer of(PlanProblem problem, List<BitSet> drawings, HarnessPlanner planner, int mostAsked, Cancel cancel,
            Progress progress) {
        return new FewestHarnesses(problem, List.copyOf(drawings), planner, mostAsked, cancel, progress).find();
    }

    private boolean fits(BitSet group) {
        return asked(group).equals(Optional.of(true));
    }

    private Optional<Boolean> asked(BitSet group) {
        return known.computeIfAbsent((BitSet) group.clone(), key -> {
            // what fits some fits fewer of them
            if (fitting.stream().anyMatch(each -> isIn(key, each))) {
                return Optional.of(true);
            }
            if (quarrelling.stream().anyMatch(each -> isIn(each, key))) {
                return Optional.of(false);
            }
            progress.report("sets of drawings that one harness may serve", known.size(), 0);
            Optional<Boolean> fits = planned(key);
            fits.ifPresent(answer -> (answer ? fitting : quarrelling).add(key));
            return fits;
        });
    }

    private static boolean isIn(BitSet some, BitSet all) {
        BitSet rest = (BitSet) some.clone();
        rest.andNot(all);
        return rest.isEmpty();
    }

    private Optional<Boolean> planned(BitSet group) {
        BitSet vehicles = new BitSet();
        group.stream().forEach(drawing -> vehicles.or(drawings.get(drawing)));
        return planner.counting(new AtomicInteger(), MOST_PROGRAMS).fits(Parts.vehicles(problem, vehicles), cancel);
    }

    private Answer find() {
        List<Integer> alone = new ArrayList<>();
        List<Integer> unclear = new ArrayList<>();
        List<Integer> rest = new ArrayList<>();
        for (int i = 0; i < drawings.size(); i++) {
            apart[i] = new BitSet();
            Optional<Boolean> fits = asked(set(i));
            (fits.isEmpty() ? unclear : fits.get() ? rest : alone).add(i);
        }
        for (int i : rest) {
            for (int j : rest) {
                if (i < j && asked(set(i, j)).equals(Optional.of(false))) {
                    apart[i].set(j);
                    apart[j].set(i);
                }
            }
        }
        rest.sort(Comparator.comparingInt((Integer i) -> -apart[i].cardinality()).thenComparing(i -> i));
        List<Integer> clique = clique(rest);
        BitSet left = new BitSet();
        rest.stream().filter(each -> !clique.contains(each)).forEach(left::set);
        List<BitSet> groups = new ArrayList<>();
        int before = known.size();
        for (int most = Math.max(1, clique.size()); !rest.isEmpty() && groups.isEmpty(); most++) {
            // as many harnesses as drawings always do, and each drawing then takes the first that it may
            most = known.size() - before >= 2 * mostAsked ? rest.size() : most;
            askedAtMost = most < rest.size() ? known.size() + mostAsked : Integer.MAX_VALUE;
            steps = 0;
            place(left, new ArrayList<>(clique.stream().map(FewestHarnesses::set).toList()), most, groups);
        }
        return new Answer(groups.stream().map(group -> group.stream().boxed().toList())
                .sorted(Comparator.comparing(List::getFirst)).toList(), alone, unclear,
                clique.stream().sorted().toList(), known.size(),
                (int) known.values().stream().filter(Optional::isEmpty).count(), isExhausted);
    }

    private static BitSet set(int... members) {
        BitSet set = new BitSet();
        for (int each : members) {
            set.set(each);
        }
        return set;
    }

    /** A largest set of drawings of which no two go together, by branch and bound. */
    private List<Integer> clique(List<Integer> rest) {
        List<Integer> best = new ArrayList<>();
        grow(new ArrayList<>(), rest, best);
        return best;
    }

    private void grow(List<Integer> chosen, List<Integer> candidates, List<Integer> best) {
        cancel.check();
        steps++;
        if (chosen.size() > best.size()) {
            best.clear();
            best.addAll(chosen);
        }
        for (int i = 0; i < candidates.size() && steps < MOST_STEPS
                && chosen.size() + candidates.size() - i > best.size(); i++) {
            int next = candidates.get(i);
            chosen.add(next);
            grow(chosen, candidates.subList(i + 1, candidates.size()).stream().filter(apart[next]::get).toList(),
                    best);
            chosen.removeLast();
        }
    }

    /**
     * Puts all that are left into so many groups; that first which has the fewest groups left to go to (Brélaz,
     * Communications of the ACM 22, 1979).
     */
    private boolean place(BitSet left, List<BitSet> groups, int most, List<BitSet> found) {
        cancel.check();
        if (left.isEmpty()) {
            groups.forEach(group -> found.add((BitSet) group.clone()));
            return true;
        }
        steps++;
        if (known.size() >= askedAtMost || steps > MOST_STEPS && askedAtMost != Integer.MAX_VALUE) {
            isExhausted = false;
            return false;
        }
        int next = next(left, groups);
        left.clear(next);
        // groups that are added farther on are taken away again before the next one is tried
        for (int i = 0; i < groups.size(); i++) {
            BitSet group = groups.get(i);
            if (!group.intersects(apart[next])) {
                group.set(next);
                if (fits(group) && place(left, groups, most, found)) {
                    return true;
                }
                group.clear(next);
            }
        }
        if (groups.size() < most) {
            groups.add(set(next));
            if (place(left, groups, most, found)) {
                return true;
            }
            groups.removeLast();
        }
        left.set(next);
        return false;
    }

    private int next(BitSet left, List<BitSet> groups) {
        int best = -1;
        long fewest = Long.MAX_VALUE;
        for (int each = left.nextSetBit(0); each >= 0; each = left.nextSetBit(each + 1)) {
            BitSet quarrels = apart[each];
            long free = groups.stream().filter(group -> !group.intersects(quarrels)).count();
            if (free < fewest || free == fewest && quarrels.cardinality() > apart[best].cardinality()) {
                fewest = free;
                best = each;
            }
        }
        return best;
    }
}
