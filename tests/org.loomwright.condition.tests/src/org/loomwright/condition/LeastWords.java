// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Expression.Choice;
import org.loomwright.condition.Expression.Compare;
import org.loomwright.condition.Expression.Range;

/**
 * The least number of terms and then of words for some vehicles of a small platform, by trying everything: every phrase
 * for a set of members, every term, every way to cover the vehicles by terms. Knows the rules of {@link Wording}, and
 * nothing of how the words are found.
 */
final class LeastWords {
    private static final int TERM = 10_000;
    private static final int NEVER = Integer.MAX_VALUE / 2;

    private final Choices choices;
    private final Enumeration plain;
    private final List<Map<String, String>> wanted;
    private final List<Map<String, String>> unwanted;
    private final Map<Integer, Integer> wordsByCovered = new HashMap<>();

    /** Takes at most 14 vehicles to name, and those not to name. */
    LeastWords(Choices choices, List<Map<String, String>> wanted, List<Map<String, String>> unwanted) {
        this.choices = choices;
        this.plain = new Enumeration(choices);
        this.wanted = wanted;
        this.unwanted = unwanted;
    }

    /** Returns the number of terms times 10,000 plus the number of words. */
    int find() {
        int all = (1 << wanted.size()) - 1;
        boolean[] inTerm = new boolean[unwanted.size()];
        Arrays.fill(inTerm, true);
        terms(0, all, inTerm, 0);
        int[] least = new int[all + 1];
        Arrays.fill(least, NEVER);
        least[0] = 0;
        for (int covered = 0; covered < all; covered++) {
            int open = Integer.lowestOneBit(~covered);
            for (Map.Entry<Integer, Integer> term : wordsByCovered.entrySet()) {
                if ((term.getKey() & open) != 0 && least[covered] < NEVER) {
                    int joined = covered | term.getKey();
                    least[joined] = Math.min(least[joined], least[covered] + TERM + term.getValue());
                }
            }
        }
        return least[all];
    }

    /** Tries every set of members of every axis from one on; keeps the fewest words for each set of vehicles named. */
    private void terms(int axis, int covered, boolean[] inTerm, int words) {
        if (axis == choices.axes().size()) {
            boolean avoids = true;
            for (boolean in : inTerm) {
                avoids &= !in;
            }
            if (avoids && covered != 0) {
                wordsByCovered.merge(covered, words, Math::min);
            }
            return;
        }
        Axis named = choices.axes().get(axis);
        int size = named.members().size();
        int[] phrases = phrases(named);
        for (int members = 1; members < 1 << size; members++) {
            int left = 0;
            for (int i = 0; i < wanted.size(); i++) {
                left |= has(members, named, wanted.get(i)) ? covered & 1 << i : 0;
            }
            if (left == 0) {
                continue;
            }
            boolean[] still = new boolean[inTerm.length];
            for (int i = 0; i < inTerm.length; i++) {
                still[i] = inTerm[i] && has(members, named, unwanted.get(i));
            }
            terms(axis + 1, left, still, words + phrases[members]);
        }
    }

    private static boolean has(int members, Axis axis, Map<String, String> vehicle) {
        return (members >> axis.members().indexOf(vehicle.get(axis.name())) & 1) == 1;
    }

    /** Returns the fewest words for each set of members, as a bit mask. */
    private int[] phrases(Axis axis) {
        int all = (1 << axis.members().size()) - 1;
        int[] joined = joined(all, switch (axis.kind()) {
            case YEAR -> yearRuns(axis);
            case GROUP -> singles(axis);
            case OPTION, UPGRADE -> Map.of(2, 1);
        });
        int[] phrases = joined.clone();
        for (int members = 1; members < all; members++) {
            phrases[members] = Math.min(phrases[members], 1 + joined[all & ~members]);
        }
        if (axis.kind() == Axis.Kind.YEAR) {
            Choices.Years span = choices.years().orElseThrow();
            for (int year = span.first(); year <= span.last(); year++) {
                int members = mask(new Compare("year", Relation.NE, Integer.toString(year)), axis);
                phrases[members] = Math.min(phrases[members], 3);
            }
        }
        phrases[all] = 0;
        return phrases;
    }

    private static Map<Integer, Integer> singles(Axis axis) {
        Map<Integer, Integer> singles = new HashMap<>();
        for (int member = 0; member < axis.members().size(); member++) {
            singles.put(1 << member, 1);
        }
        return singles;
    }

    /** Returns the fewest words for each union of parts. */
    private static int[] joined(int all, Map<Integer, Integer> parts) {
        int[] least = new int[all + 1];
        Arrays.fill(least, NEVER);
        least[0] = 0;
        for (int members = 0; members <= all; members++) {
            for (Map.Entry<Integer, Integer> part : parts.entrySet()) {
                int joined = members | part.getKey();
                least[joined] = Math.min(least[joined], least[members] + part.getValue());
            }
        }
        return least;
    }

    /** Returns every way to write a run of years, with its words. */
    private Map<Integer, Integer> yearRuns(Axis axis) {
        List<String> years = new ArrayList<>();
        Choices.Years span = choices.years().orElseThrow();
        for (int year = span.first(); year <= span.last(); year++) {
            years.add(Integer.toString(year));
        }
        List<String> breaks = choices.breaks().stream().map(Choices.Break::name).toList();
        List<String> names = new ArrayList<>(years);
        names.addAll(breaks);
        Map<Integer, Integer> runs = new HashMap<>();
        for (String one : names) {
            for (Relation relation : Relation.values()) {
                if (relation != Relation.NE) {
                    add(runs, mask(new Compare("year", relation, one), axis), 3);
                }
            }
            for (String other : names) {
                int from = mask(new Compare("year", Relation.GE, one), axis);
                add(runs, mask(new Range("year", one, other), axis), 4);
                int before = mask(new Compare("year", Relation.LT, other), axis);
                add(runs, from & before, breaks.contains(other) ? 6 : NEVER);
            }
        }
        for (String change : breaks) {
            int after = mask(new Choice(change), axis);
            add(runs, after, 1);
            for (String one : names) {
                add(runs, mask(new Compare("year", Relation.EQ, one), axis) & ~after, 5);
                add(runs, mask(new Compare("year", Relation.GE, one), axis) & ~after, 5);
            }
        }
        return runs;
    }

    private static void add(Map<Integer, Integer> runs, int members, int words) {
        boolean run = Integer.bitCount((members >> Integer.numberOfTrailingZeros(members)) + 1) <= 1;
        if (members != 0 && run) {
            runs.merge(members, words, Math::min);
        }
    }

    private int mask(Expression expression, Axis axis) {
        int mask = 0;
        for (int member = 0; member < axis.members().size(); member++) {
            boolean in = plain.holds(expression, Map.of("year", axis.members().get(member)));
            mask |= in ? 1 << member : 0;
        }
        return mask;
    }
}
