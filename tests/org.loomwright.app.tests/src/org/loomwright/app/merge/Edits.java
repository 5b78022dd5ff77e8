// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.merge;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Edits of a text as people make them, by seed. */
final class Edits {

    private static final Pattern NUMBER = Pattern.compile("(?<=\\s)\\d+(?= (mm|ga|A|C)\\b)");
    private static final Pattern DECLARED = Pattern.compile("^\\s*(connector|branch|breakout|device|splice) (\\w+)\\b");
    private static final Pattern WIRE = Pattern.compile("^(\\s*wire )(\\w+)(.*)$");

    private Edits() {
    }

    /** One to four edits, most of them in the first half of a file so that the two sides meet now and then. */
    static String of(String text, Random random, boolean renames) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        int edits = 1 + random.nextInt(4);
        for (int i = 0; i < edits; i++) {
            edit(lines, random, renames);
        }
        return String.join("\n", lines) + "\n";
    }

    private static void edit(List<String> lines, Random random, boolean renames) {
        switch (random.nextInt(renames ? 8 : 6)) {
            case 0, 1 -> number(lines, random);
            case 2 -> remove(lines, random);
            case 3 -> another(lines, random);
            case 4 -> lines.add(random.nextInt(lines.size()), "// a note " + random.nextInt(100));
            case 5 -> title(lines, random);
            case 6 -> rename(lines, random);
            default -> move(lines, random);
        }
    }

    private static int where(List<String> lines, Pattern pattern, Random random) {
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            if (!line.strip().startsWith("//") && pattern.matcher(line).find()) {
                all.add(i);
            }
        }
        return all.isEmpty() ? -1 : all.get(random.nextInt(1 + random.nextInt(all.size())));
    }

    private static void number(List<String> lines, Random random) {
        int at = where(lines, NUMBER, random);
        if (at >= 0) {
            lines.set(at, NUMBER.matcher(lines.get(at)).replaceFirst(Integer.toString(1 + random.nextInt(40))));
        }
    }

    /** Removes a line that opens and closes nothing. */
    private static void remove(List<String> lines, Random random) {
        int at = where(lines, Pattern.compile("^\\s+[a-z]\\w* [^{}]*$"), random);
        if (at >= 0) {
            lines.remove(at);
        }
    }

    /** Adds a wire like one that is there. */
    private static void another(List<String> lines, Random random) {
        int at = where(lines, WIRE, random);
        if (at >= 0 && !lines.get(at).endsWith("{")) {
            Matcher wire = WIRE.matcher(lines.get(at));
            if (wire.matches()) {
                lines.add(at + 1, wire.group(1) + "z" + random.nextInt(1000) + wire.group(3));
            }
        }
    }

    private static void title(List<String> lines, Random random) {
        int at = where(lines, Pattern.compile("\"[A-Z][^\"]*\""), random);
        if (at >= 0) {
            lines.set(at, lines.get(at).replaceFirst("\"[A-Z][^\"]*\"", "\"Title " + random.nextInt(5) + "\""));
        }
    }

    private static void rename(List<String> lines, Random random) {
        int at = where(lines, DECLARED, random);
        if (at >= 0) {
            Matcher declared = DECLARED.matcher(lines.get(at));
            if (declared.find()) {
                String name = declared.group(2);
                String other = name + "q" + random.nextInt(3);
                lines.replaceAll(line -> line.replaceAll("\\b" + name + "\\b", other));
            }
        }
    }

    /** Moves a wire to the end of the circuit of another wire. */
    private static void move(List<String> lines, Random random) {
        int from = where(lines, WIRE, random);
        int to = where(lines, WIRE, random);
        if (from >= 0 && to >= 0 && !lines.get(from).endsWith("{") && !lines.get(to).endsWith("{")) {
            String line = lines.remove(from);
            lines.add(to > from ? to : to + 1, line);
        }
    }
}
