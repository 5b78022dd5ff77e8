// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Edits of any text, sensible or not, by seed. */
final class LineEdits {

    private static final Pattern NUMBER = Pattern.compile("\\b\\d+\\b");
    private static final Pattern NAME = Pattern.compile("\\b[A-Za-z][A-Za-z]*\\d*\\b");

    private LineEdits() {
    }

    /** One edit: a line lost, doubled or moved, another number, a name changed here or everywhere. */
    static String edit(String text, Random random) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        int at = random.nextInt(lines.size());
        String line = lines.get(at);
        switch (random.nextInt(6)) {
            case 0 -> lines.remove(at);
            case 1 -> lines.add(at, line);
            case 2 -> lines.add(random.nextInt(lines.size()), lines.remove(at));
            case 3 -> lines.set(at, one(NUMBER.matcher(line), line, Integer.toString(1 + random.nextInt(40)), random));
            case 4 -> lines.set(at, one(NAME.matcher(line), line, "x" + random.nextInt(9), random));
            default -> {
                Matcher name = NAME.matcher(line);
                if (name.find()) {
                    String all = name.group();
                    lines.replaceAll(each -> each.replaceAll("\\b" + all + "\\b", all + "q"));
                }
            }
        }
        return String.join("\n", lines) + "\n";
    }

    /** The line with one of the matches replaced. */
    private static String one(Matcher matcher, String line, String by, Random random) {
        List<int[]> found = new ArrayList<>();
        while (matcher.find()) {
            found.add(new int[] {matcher.start(), matcher.end()});
        }
        if (found.isEmpty()) {
            return line;
        }
        int[] hit = found.get(random.nextInt(found.size()));
        return line.substring(0, hit[0]) + by + line.substring(hit[1]);
    }
}
