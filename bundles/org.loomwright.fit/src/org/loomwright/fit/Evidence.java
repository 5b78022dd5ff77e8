// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.ArrayList;
import java.util.List;

/**
 * What a verdict rests on: the drawings' lengths that went into it, each counted once.
 *
 * @param sheet   printed on a sheet
 * @param sample  measured on samples
 * @param scaled  scaled off a drawing
 * @param missing not known
 */
public record Evidence(int sheet, int sample, int scaled, int missing) {

    /** {@code 31 lengths from sheets, 9 from samples, 4 missing}. */
    public String words() {
        List<String> words = new ArrayList<>();
        words.add(sheet + (sheet == 1 ? " length" : " lengths") + " from sheets");
        if (sample > 0) {
            words.add(sample + " from samples");
        }
        if (scaled > 0) {
            words.add(scaled + " scaled");
        }
        if (missing > 0) {
            words.add(missing + " missing");
        }
        return String.join(", ", words);
    }
}
