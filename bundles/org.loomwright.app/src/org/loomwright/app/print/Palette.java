// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

/**
 * How words are set off on a terminal (ECMA-48 colours), or not at all. Nothing is ever said by colour alone.
 *
 * @param colours true on a terminal that shows colours
 */
public record Palette(boolean colours) {

    private static final char ESCAPE = 27;

    /** For files, pipes and people who want none. */
    public static final Palette PLAIN = new Palette(false);

    /** What a word is. */
    public enum Tone {
        ERROR("1;31"), WARNING("1;33"), NOTE("1;36"), MARGIN("34"), HEAD("1"), GOOD("32"), FAINT("2");

        private final String code;

        Tone(String code) {
            this.code = code;
        }
    }

    /** The text in that tone. */
    public String paint(Tone tone, String text) {
        return colours && !text.isEmpty() ? ESCAPE + "[" + tone.code + "m" + text + ESCAPE + "[0m" : text;
    }

    /** The text without what {@link #paint} added. */
    static String unpainted(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        int from = 0;
        for (int at = text.indexOf(ESCAPE); at >= 0; at = text.indexOf(ESCAPE, from)) {
            plain.append(text, from, at);
            from = text.indexOf('m', at) + 1;
        }
        return plain.append(text, from, text.length()).toString();
    }
}
