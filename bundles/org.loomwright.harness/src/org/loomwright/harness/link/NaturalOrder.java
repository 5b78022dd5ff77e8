// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.Comparator;

/** The order of names that a person expects: {@code 2} before {@code 10}, {@code J2} before {@code J10}. */
public final class NaturalOrder implements Comparator<String> {

    @Override
    public int compare(String left, String right) {
        return order(left, right);
    }

    /** Compares digit runs by value and everything else by character. */
    static int order(String left, String right) {
        int i = 0;
        int j = 0;
        while (i < left.length() && j < right.length()) {
            if (isDigit(left.charAt(i)) && isDigit(right.charAt(j))) {
                int endLeft = endOfDigits(left, i);
                int endRight = endOfDigits(right, j);
                int startLeft = skipZeros(left, i, endLeft);
                int startRight = skipZeros(right, j, endRight);
                int byLength = Integer.compare(endLeft - startLeft, endRight - startRight);
                if (byLength != 0) {
                    return byLength;
                }
                for (int k = 0; k < endLeft - startLeft; k++) {
                    int byDigit = Character.compare(left.charAt(startLeft + k), right.charAt(startRight + k));
                    if (byDigit != 0) {
                        return byDigit;
                    }
                }
                i = endLeft;
                j = endRight;
            } else {
                int byCharacter = Character.compare(left.charAt(i++), right.charAt(j++));
                if (byCharacter != 0) {
                    return byCharacter;
                }
            }
        }
        int byRest = Integer.compare(left.length() - i, right.length() - j);
        return byRest != 0 ? byRest : left.compareTo(right);
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static int endOfDigits(String text, int from) {
        int end = from;
        while (end < text.length() && isDigit(text.charAt(end))) {
            end++;
        }
        return end;
    }

    private static int skipZeros(String text, int from, int end) {
        int start = from;
        while (start < end - 1 && text.charAt(start) == '0') {
            start++;
        }
        return start;
    }
}
