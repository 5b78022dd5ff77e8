// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Which of some words was meant by a misspelt one: the one place behind every "did you mean". */
public final class Spelling {
    private static final int LONGEST = 60;

    private Spelling() {
    }

    /**
     * Returns the one word that is nearest: the same but for case, one change away, or two for words of six letters and
     * more. A word of two letters tolerates a swap or a letter too many, a single letter nothing. Empty if none is near
     * or two are equally near.
     */
    public static Optional<String> nearest(String given, Collection<String> words) {
        if (given.length() < 2 || given.length() > LONGEST) {
            return Optional.empty();
        }
        String best = null;
        int least = Integer.MAX_VALUE;
        for (String word : words) {
            int distance = word.equalsIgnoreCase(given) ? 0 : distance(given, word);
            int most = word.length() >= 6 ? 2 : 1;
            if (distance > most || Math.min(given.length(), word.length()) < 3 && !closeShort(given, word)) {
                continue;
            }
            if (distance == least && !word.equals(best)) {
                best = null;
            } else if (distance < least) {
                least = distance;
                best = word;
            }
        }
        return Optional.ofNullable(best);
    }

    /**
     * Returns whether a word can only be a slip for another one, and not the name of something else: they differ in
     * case alone, or, in words of four letters and more, by one letter within or two letters swapped. What tells names
     * apart must agree: figures, capital letters and the last letter ({@code headLampL} is never a slip for {@code
     * headLampR}, nor {@code J12} for {@code J11}).
     */
    public static boolean isSlip(String given, String meant) {
        if (given.equalsIgnoreCase(meant)) {
            return true;
        }
        return Math.min(given.length(), meant.length()) >= 4 && distance(given, meant) == 1
                && given.charAt(given.length() - 1) == meant.charAt(meant.length() - 1)
                && distinguishing(given).equals(distinguishing(meant));
    }

    private static String distinguishing(String word) {
        return word.codePoints().filter(c -> !Character.isLowerCase(c))
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString();
    }

    private static boolean closeShort(String given, String word) {
        return given.equalsIgnoreCase(word) || given.length() == word.length() + 1 && given.startsWith(word)
                || given.length() == 2 && word.length() == 2 && given.charAt(0) == word.charAt(1)
                        && given.charAt(1) == word.charAt(0);
    }

    /** Counts insertions, deletions, changes and swaps of neighbours, each letter in at most one of them. */
    static int distance(String one, String other) {
        String a = one.toLowerCase(Locale.ROOT);
        String b = other.toLowerCase(Locale.ROOT);
        int[][] table = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    table[i][j] = i + j;
                    continue;
                }
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                int best = Math.min(table[i - 1][j - 1] + change, 1 + Math.min(table[i - 1][j], table[i][j - 1]));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    best = Math.min(best, table[i - 2][j - 2] + 1);
                }
                table[i][j] = best;
            }
        }
        return table[a.length()][b.length()];
    }
}
