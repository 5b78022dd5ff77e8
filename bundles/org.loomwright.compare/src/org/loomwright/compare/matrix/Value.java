// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.Optional;
import org.loomwright.quantity.Length;

/**
 * One value in a cell.
 *
 * @param written as the drawing writes it: {@code 7 1/2 in}, {@code 14 ga}, {@code J1}
 * @param when    the condition as written, within the vehicles of the drawing; empty when there is none
 * @param key     what makes two values equal: a length is the same in inches and millimetres, and the end of a wire is
 *                the same cavity whatever its connector is called
 * @param length  for a length that is known
 * @param path    true for a length along the path, without what plugging in takes
 */
public record Value(String written, String when, String key, Optional<Length> length, boolean path) {

    /** A value that is what it is written as. */
    static Value of(String written, String when) {
        return named(written, when, written);
    }

    /** A value that equals those of the same key, however they are written. */
    static Value named(String written, String when, String key) {
        return new Value(written, when, key, Optional.empty(), false);
    }

    /** The same under a condition. */
    Value under(String condition) {
        return new Value(written, condition, key, length, path);
    }

    /** {@code 16 ga when fan}. */
    public String words() {
        return when.isEmpty() ? written : written.isEmpty() ? "when " + when : written + " when " + when;
    }

    /** What two values have in common exactly if they are equal. */
    String sameness() {
        return key + "\n" + when;
    }
}
