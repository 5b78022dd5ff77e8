// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.clause;

/**
 * A piece of a line that states one thing: {@code from J1:7}.
 *
 * @param key   what it states, once in a line: its keyword, or the part that it plays, such as {@code size}
 * @param space what stands before it: white space, and the comma of a list
 * @param text  the piece as written
 * @param words the same with one space between words; equal for what differs in layout only
 */
public record Clause(String key, String space, String text, String words) {

    /** The part that the first word of a line plays. */
    public static final String KIND = "kind";

    /** The part that the name plays. */
    public static final String NAME = "name";

    /** What it states, without its keyword. */
    public String value() {
        String word = word();
        return words.startsWith(word + " ") ? words.substring(word.length() + 1) : words;
    }

    /** The keyword, or the part that it plays, for people. */
    public String word() {
        int end = key.indexOf(isListed() ? ' ' : '#');
        return end < 0 ? key : key.substring(0, end);
    }

    /** True for a member of a list. */
    public boolean isListed() {
        return key.indexOf(' ') >= 0;
    }

    Clause after(String other) {
        return new Clause(key, other, text, words);
    }
}
