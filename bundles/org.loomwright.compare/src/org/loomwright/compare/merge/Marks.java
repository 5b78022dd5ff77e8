// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

/**
 * How the two sides of a conflict are told apart in the text: the usual lines of version control.
 *
 * @param ours   what our side is called
 * @param theirs what their side is called
 * @param size   how often a sign is repeated, at least 7
 */
public record Marks(String ours, String theirs, int size) {

    /** The usual size. */
    public static final int USUAL = 7;

    public Marks {
        if (size < USUAL) {
            throw new IllegalArgumentException("marks of less than " + USUAL + " signs");
        }
    }

    /** The line above our side. */
    public String begin() {
        return "<".repeat(size) + " " + ours;
    }

    /** The line between the sides. */
    public String middle() {
        return "=".repeat(size);
    }

    /** The line below their side. */
    public String end() {
        return ">".repeat(size) + " " + theirs;
    }
}
