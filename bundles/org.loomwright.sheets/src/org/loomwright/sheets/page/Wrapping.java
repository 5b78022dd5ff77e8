// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.page;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Breaks texts into lines: between words, and within a word only where it is longer than a line. */
public final class Wrapping {

    /** A figure and its unit stay together. */
    private static final Pattern UNIT = Pattern.compile("(?<=[0-9]) (?=(ga|awg|mm2|mm|m|A|V|W|N|ohm|Ω|mΩ|pc)\\b)");
    private static final String TIE = "\u00a0";

    private final Typeface face;

    /** @param face how wide texts are */
    public Wrapping(Typeface face) {
        this.face = face;
    }

    /** The lines, at least one; none is wider than {@code width} mm, but for a single character. */
    public List<String> lines(String text, double points, boolean bold, double width) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : tied(text).strip().split(" +")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (face.width(longer, points, bold) <= width) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            line = word;
            while (face.width(line, points, bold) > width && line.length() > 1) {
                int end = fitting(line, points, bold, width);
                lines.add(line.substring(0, end));
                line = line.substring(end);
            }
        }
        lines.add(line);
        return lines.stream().map(each -> each.replace(TIE, " ")).toList();
    }

    private String tied(String text) {
        return UNIT.matcher(face.printable(text)).replaceAll(TIE);
    }

    /** Width of the widest word in mm. */
    double longestWord(String text, double points, boolean bold) {
        double widest = 0;
        for (String word : tied(text).split(" +")) {
            widest = Math.max(widest, face.width(word, points, bold));
        }
        return widest;
    }

    private int fitting(String word, double points, boolean bold, double width) {
        int end = 1;
        while (end < word.length() && face.width(word.substring(0, end + 1), points, bold) <= width) {
            end++;
        }
        return end < word.length() && Character.isLowSurrogate(word.charAt(end)) && end > 1 ? end - 1 : end;
    }
}
