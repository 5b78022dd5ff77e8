// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.HashSet;
import java.util.Set;

/** Gives each element a name of its own: the wanted one, else with the first number behind it that is free. */
final class NameBook {

    private final Set<String> taken = new HashSet<>();

    String take(String wanted) {
        if (taken.add(wanted)) {
            return wanted;
        }
        int number = 2;
        while (!taken.add(wanted + "_" + number)) {
            number++;
        }
        return wanted + "_" + number;
    }

    /** The same with the next free letter of the alphabet in place of a letter that is taken. */
    String letter(String wanted) {
        if (wanted.length() == 1 && taken.contains(wanted)) {
            for (char each = 'a'; each <= 'z'; each++) {
                if (taken.add(String.valueOf(each))) {
                    return String.valueOf(each);
                }
            }
        }
        return take(wanted);
    }
}
