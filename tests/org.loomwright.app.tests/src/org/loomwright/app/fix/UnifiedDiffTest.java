// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fix;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** A difference leads from the old text to the new one, whoever reads it. */
class UnifiedDiffTest {

    private static final Pattern HUNK = Pattern.compile("@@ -(\\d+),(\\d+) \\+(\\d+),(\\d+) @@");

    /** Applies a difference as POSIX.1-2017 (patch, diff -U) describes the format. */
    private static String patched(String old, String diff) {
        List<String> lines = List.of(old.isEmpty() ? new String[0] : old.split("(?<=\n)"));
        List<String> patch = List.of(diff.split("(?<=\n)"));
        StringBuilder out = new StringBuilder();
        int at = 0;
        for (int i = 2; i < patch.size(); i++) {
            Matcher head = HUNK.matcher(patch.get(i).strip());
            if (head.matches()) {
                int start = Integer.parseInt(head.group(1)) - (head.group(2).equals("0") ? 0 : 1);
                for (; at < start; at++) {
                    out.append(lines.get(at));
                }
                continue;
            }
            boolean endless = i + 1 < patch.size() && patch.get(i + 1).startsWith("\\");
            String text = patch.get(i).substring(1);
            text = endless ? text.substring(0, text.length() - 1) : text;
            switch (patch.get(i).charAt(0)) {
                case ' ' -> {
                    assertEquals(lines.get(at++), text);
                    out.append(text);
                }
                case '-' -> assertEquals(lines.get(at++), text);
                case '+' -> out.append(text);
                default -> assertTrue(patch.get(i).startsWith("\\"), patch.get(i));
            }
        }
        for (; at < lines.size(); at++) {
            out.append(lines.get(at));
        }
        return out.toString();
    }

    @Test
    void oneChangedLineHasThreeLinesAround() {
        assertEquals("""
                --- a.loom
                +++ a.loom
                @@ -2,7 +2,7 @@
                 b
                 c
                 d
                -e
                +E
                 f
                 g
                 h
                """, UnifiedDiff.of("a.loom", "a\nb\nc\nd\ne\nf\ng\nh\ni\n", "a\nb\nc\nd\nE\nf\ng\nh\ni\n"));
    }

    @Test
    void theEndWithoutALineEndIsMarked() {
        assertEquals("--- a\n+++ a\n@@ -1,1 +1,1 @@\n-x\n\\ No newline at end of file\n+x\n",
                UnifiedDiff.of("a", "x", "x\n"));
        assertEquals("", UnifiedDiff.of("a", "x", "x"));
    }

    @Test
    void itLeadsFromAnyTextToAnyOther() {
        Random random = new Random(7);
        for (int i = 0; i < 2_000; i++) {
            String old = text(random, random.nextInt(30));
            List<String> lines = new ArrayList<>(List.of(old.split("(?<=\n)")));
            for (int change = random.nextInt(6); change > 0 && !lines.isEmpty(); change--) {
                int at = random.nextInt(lines.size());
                if (random.nextBoolean()) {
                    lines.remove(at);
                } else {
                    lines.add(at, text(random, 1));
                }
            }
            String now = random.nextInt(10) == 0 ? text(random, random.nextInt(30)) : String.join("", lines);
            assertEquals(now, old.equals(now) ? now : patched(old, UnifiedDiff.of("a", old, now)), old + "---\n" + now);
        }
    }

    @Test
    void aTextThatIsAllNewIsOneChange() {
        String old = "a\n".repeat(3_000);
        String now = "b\n".repeat(3_000);
        assertEquals(now, patched(old, UnifiedDiff.of("a", old, now)));
    }

    private static String text(Random random, int lines) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < lines; i++) {
            text.append((char) ('a' + random.nextInt(5))).append('\n');
        }
        return text.toString();
    }
}
