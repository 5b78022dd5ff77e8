// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** One of three texts: that of the side that changed it. */
final class Three {

    private static final Pattern LINE = Pattern.compile("(?<=\n)");

    private Three() {
    }

    /** Ours where both changed it. */
    static String of(String base, String ours, String theirs) {
        return ours.equals(base) ? theirs : ours;
    }

    /** Comments and blank lines: where both changed them, ours, and below the lines that they added. */
    static String notes(String base, String ours, String theirs) {
        if (plain(ours).equals(plain(base))) {
            return plain(theirs).equals(plain(base)) ? of(base, ours, theirs) : theirs;
        }
        if (plain(theirs).equals(plain(base)) || plain(theirs).equals(plain(ours))) {
            return ours;
        }
        Set<String> known = new HashSet<>();
        List.of(base, ours).forEach(text -> LINE.splitAsStream(text).map(String::strip).forEach(known::add));
        StringBuilder both = new StringBuilder(ours);
        LINE.splitAsStream(theirs).filter(line -> !line.isBlank() && !known.contains(line.strip())).forEach(line -> {
            if (!both.isEmpty() && both.charAt(both.length() - 1) != '\n') {
                both.append('\n');
            }
            both.append(line);
        });
        return both.toString();
    }

    private static String plain(String text) {
        return text.replace("\r\n", "\n");
    }
}
