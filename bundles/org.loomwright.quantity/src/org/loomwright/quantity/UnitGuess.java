// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.util.Locale;
import java.util.Optional;

/** Guesses which unit was meant: the did-you-mean behind {@link Unit#nearest}. */
final class UnitGuess {
    /** Rows of a keyboard; keys next to each other in a row are slips of a finger. */
    private static final String[] ROWS = {"1234567890", "qwertyuiop", "asdfghjkl", "zxcvbnm"};
    private static final int SLIP = 1;
    private static final int CHANGE = 2;
    private static final int LONGEST = 24;

    private UnitGuess() {
    }

    static Optional<Unit> nearest(String text) {
        String given = text.strip();
        if (given.isEmpty() || given.length() > LONGEST) {
            return Optional.empty();
        }
        Optional<Unit> spelled = spelled(given);
        return spelled.isPresent() ? spelled : slipped(given.toLowerCase(Locale.ROOT));
    }

    private static Optional<Unit> spelled(String given) {
        Optional<Unit> exact = Unit.ofSymbol(given);
        if (exact.isPresent()) {
            return exact;
        }
        for (Unit unit : Unit.values()) {
            if (unit.symbol().equalsIgnoreCase(given)
                    || unit.otherSpellings().stream().anyMatch(given::equalsIgnoreCase)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }

    /** One change at most; a text of one letter has nothing left to recognise it by. */
    private static Optional<Unit> slipped(String given) {
        Unit best = null;
        int least = CHANGE + 1;
        for (Unit unit : given.length() < 2 ? new Unit[0] : Unit.values()) {
            int weight = weight(given, unit.symbol().toLowerCase(Locale.ROOT));
            for (String other : unit.otherSpellings()) {
                weight = other.length() < 4 ? weight : Math.min(weight, weight(given, other.toLowerCase(Locale.ROOT)));
            }
            if (weight < least) {
                least = weight;
                best = unit;
            }
        }
        return Optional.ofNullable(best);
    }

    /** Returns 1 for a neighbouring key, a letter too many or two letters swapped, 2 for any other single change. */
    private static int weight(String given, String meant) {
        int head = 0;
        int shorter = Math.min(given.length(), meant.length());
        while (head < shorter && given.charAt(head) == meant.charAt(head)) {
            head++;
        }
        int tail = 0;
        while (tail < shorter - head
                && given.charAt(given.length() - 1 - tail) == meant.charAt(meant.length() - 1 - tail)) {
            tail++;
        }
        String wrong = given.substring(head, given.length() - tail);
        String right = meant.substring(head, meant.length() - tail);
        if (wrong.length() == 1 && right.length() == 1) {
            return neighbours(wrong.charAt(0), right.charAt(0)) ? SLIP : CHANGE;
        }
        if (wrong.length() == 2 && right.length() == 2) {
            boolean swapped = wrong.charAt(0) == right.charAt(1) && wrong.charAt(1) == right.charAt(0);
            return swapped ? SLIP : CHANGE + 1;
        }
        return wrong.length() + right.length() == 1 && shorter > 1 ? CHANGE : CHANGE + 1;
    }

    private static boolean neighbours(char one, char other) {
        for (String row : ROWS) {
            int at = row.indexOf(one);
            if (at >= 0 && Math.abs(at - row.indexOf(other)) == 1 && row.indexOf(other) >= 0) {
                return true;
            }
        }
        return false;
    }
}
