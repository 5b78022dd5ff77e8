// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.Arrays;

/** Where the lines of one text start. Immutable; made in one pass, a look-up takes O(log lines). */
public final class LineIndex {
    private final String file;
    private final String text;
    private final int[] starts;

    public LineIndex(String file, String text) {
        this.file = file;
        this.text = text;
        int[] found = new int[16 + text.length() / 32];
        int count = 1;
        for (int at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) {
            if (count == found.length) {
                found = Arrays.copyOf(found, count * 2);
            }
            found[count++] = at + 1;
        }
        starts = Arrays.copyOf(found, count);
    }

    /** Returns the line that holds the character at an offset, from 1. */
    public int line(int offset) {
        int at = Arrays.binarySearch(starts, offset);
        return at >= 0 ? at + 1 : -at - 1;
    }

    /** Returns the column of the character at an offset, from 1. */
    public int column(int offset) {
        return offset - starts[line(offset) - 1] + 1;
    }

    /** Returns the offset of the first character of a line. */
    public int start(int line) {
        return starts[line - 1];
    }

    /** Returns the span of a stretch; what lies beyond the text is cut off. */
    public Span span(int offset, int length) {
        int from = Math.clamp(offset, 0, text.length());
        int to = Math.clamp((long) from + length, from, text.length());
        int line = line(from);
        return new Span(file, from, to - from, line, from - starts[line - 1] + 1);
    }

    public String text() {
        return text;
    }

    public String file() {
        return file;
    }
}
