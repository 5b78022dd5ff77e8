// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.words;

/**
 * A word of a text.
 *
 * @param slot   what it is
 * @param offset of its first character in the text
 * @param text   the word as written
 */
public record Word(Slot slot, int offset, String text) {

    /** Offset of the first character behind it. */
    public int end() {
        return offset + text.length();
    }

    /** Whether a place lies in it or right at one of its ends. */
    public boolean touches(int at) {
        return at >= offset && at <= end();
    }

    Word moved(int by) {
        return by == 0 ? this : new Word(slot, offset + by, text);
    }
}
