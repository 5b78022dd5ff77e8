// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fix;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The difference of two texts in the unified format (POSIX.1-2017, diff -U), which {@code patch} reads. Finds a
 * shortest script by the greedy algorithm of Myers (1986), O((lines + changes) x changes); past
 * {@value #MOST_CHANGES} changes everything between the first and the last difference is one change.
 */
public final class UnifiedDiff {

    private static final int CONTEXT = 3;
    private static final int MOST_CHANGES = 2_000;

    private final List<String> old;
    private final List<String> now;
    /** For each line of the old text its partner in the new one, or -1. */
    private final int[] partner;

    private UnifiedDiff(String old, String now) {
        this.old = lines(old);
        this.now = lines(now);
        this.partner = new int[this.old.size()];
        match();
    }

    /** Returns the difference; empty when there is none. */
    public static String of(String file, String old, String now) {
        return old.equals(now) ? "" : "--- " + file + "\n+++ " + file + "\n" + new UnifiedDiff(old, now).hunks();
    }

    /** Lines with their ends. */
    private static List<String> lines(String text) {
        List<String> lines = new ArrayList<>();
        for (int at = 0; at < text.length();) {
            int end = text.indexOf('\n', at);
            end = end < 0 ? text.length() : end + 1;
            lines.add(text.substring(at, end));
            at = end;
        }
        return lines;
    }

    private void match() {
        Arrays.fill(partner, -1);
        int head = 0;
        int shorter = Math.min(old.size(), now.size());
        while (head < shorter && old.get(head).equals(now.get(head))) {
            partner[head] = head;
            head++;
        }
        int tail = 0;
        while (tail < shorter - head && old.get(old.size() - 1 - tail).equals(now.get(now.size() - 1 - tail))) {
            partner[old.size() - 1 - tail] = now.size() - 1 - tail;
            tail++;
        }
        between(head, old.size() - tail, now.size() - tail);
    }

    /** Matches lines from one index on, the same in both texts, up to an end in each. */
    private void between(int from, int oldEnd, int newEnd) {
        int n = oldEnd - from;
        int m = newEnd - from;
        int most = Math.min(n + m, MOST_CHANGES);
        List<int[]> reached = new ArrayList<>();
        int[] furthest = new int[2 * most + 3];
        for (int d = 0; d <= most; d++) {
            reached.add(furthest.clone());
            for (int k = -d; k <= d; k += 2) {
                int at = most + 1 + k;
                int x = k == -d || k != d && furthest[at - 1] < furthest[at + 1] ? furthest[at + 1]
                        : furthest[at - 1] + 1;
                while (x < n && x - k < m && x - k >= 0 && old.get(from + x).equals(now.get(from + x - k))) {
                    x++;
                }
                furthest[at] = x;
                if (x >= n && x - k >= m) {
                    back(from, n, m, d, most, reached);
                    return;
                }
            }
        }
    }

    private void back(int from, int n, int m, int changes, int most, List<int[]> reached) {
        int x = n;
        int y = m;
        for (int d = changes; d >= 0; d--) {
            int[] furthest = reached.get(d);
            int k = x - y;
            int at = most + 1 + k;
            boolean down = k == -d || k != d && furthest[at - 1] < furthest[at + 1];
            int startX = d == 0 ? 0 : down ? furthest[at + 1] : furthest[at - 1];
            int startY = d == 0 ? 0 : startX - (down ? k + 1 : k - 1);
            while (x > startX && y > startY && x > 0 && y > 0
                    && old.get(from + x - 1).equals(now.get(from + y - 1))) {
                x--;
                y--;
                partner[from + x] = from + y;
            }
            x = startX;
            y = startY;
        }
    }

    private record Line(char sign, String text, int oldAt, int newAt) {
    }

    private List<Line> script() {
        List<Line> script = new ArrayList<>();
        int y = 0;
        for (int x = 0; x < old.size(); x++) {
            if (partner[x] < 0) {
                script.add(new Line('-', old.get(x), x, y));
                continue;
            }
            for (; y < partner[x]; y++) {
                script.add(new Line('+', now.get(y), x, y));
            }
            script.add(new Line(' ', old.get(x), x, y++));
        }
        for (; y < now.size(); y++) {
            script.add(new Line('+', now.get(y), old.size(), y));
        }
        return script;
    }

    private String hunks() {
        List<Line> script = script();
        StringBuilder out = new StringBuilder();
        int at = 0;
        while (at < script.size()) {
            if (script.get(at).sign() == ' ') {
                at++;
                continue;
            }
            int last = at;
            for (int i = at; i < script.size() && i <= last + 2 * CONTEXT; i++) {
                last = script.get(i).sign() == ' ' ? last : i;
            }
            hunk(script.subList(Math.max(0, at - CONTEXT), Math.min(script.size(), last + 1 + CONTEXT)), out);
            at = last + 1;
        }
        return out.toString();
    }

    private static void hunk(List<Line> lines, StringBuilder out) {
        long removed = lines.stream().filter(line -> line.sign() != '+').count();
        long added = lines.stream().filter(line -> line.sign() != '-').count();
        Line first = lines.getFirst();
        out.append("@@ -").append(first.oldAt() + (removed == 0 ? 0 : 1)).append(',').append(removed).append(" +")
                .append(first.newAt() + (added == 0 ? 0 : 1)).append(',').append(added).append(" @@\n");
        for (Line line : lines) {
            out.append(line.sign()).append(line.text());
            if (!line.text().endsWith("\n")) {
                out.append("\n\\ No newline at end of file\n");
            }
        }
    }
}
