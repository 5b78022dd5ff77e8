// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.Arrays;
import org.loomwright.harness.Span;

/**
 * Finds line and column of an offset in one text.
 */
final class LineIndex {

    private final String file;
    private final int[] starts;

    LineIndex(String file, String text) {
        this.file = file;
        int[] found = new int[64];
        int count = 1;
        for (int at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) {
            if (count == found.length) {
                found = Arrays.copyOf(found, count * 2);
            }
            found[count++] = at + 1;
        }
        starts = Arrays.copyOf(found, count);
    }

    Span span(int offset, int length) {
        int at = Arrays.binarySearch(starts, offset);
        int line = at >= 0 ? at : -at - 2;
        return new Span(file, offset, length, line + 1, offset - starts[line] + 1);
    }
}
