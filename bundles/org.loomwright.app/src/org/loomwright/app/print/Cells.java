// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

/**
 * Text as a terminal shows it: how many columns it takes, and without characters that would move the cursor, change
 * colours or turn the direction of writing.
 */
final class Cells {

    private static final int TAB = 4;

    /** First and last code points of the ranges that take two columns, after Unicode's East Asian Width (W and F). */
    private static final int[] WIDE = {
        0x1100, 0x115f, 0x2e80, 0x303e, 0x3041, 0x33ff, 0x3400, 0x4dbf, 0x4e00, 0x9fff, 0xa000, 0xa4cf, 0xa960, 0xa97c,
        0xac00, 0xd7a3, 0xf900, 0xfaff, 0xfe30, 0xfe6f, 0xff01, 0xff60, 0xffe0, 0xffe6, 0x1f300, 0x1f64f, 0x1f680,
        0x1f6ff, 0x1f900, 0x1f9ff, 0x20000, 0x3fffd};

    private Cells() {
    }

    /** Columns that the printable form of the text takes when it starts in column 0. */
    static int width(String text) {
        return width(text, 0, text.length(), 0);
    }

    /** Columns that part of a line takes when it starts in a column; tabs reach to the next multiple of four. */
    static int width(String line, int from, int to, int column) {
        int at = column;
        for (int i = from; i < to; ) {
            int c = line.codePointAt(i);
            at += c == '\t' ? TAB - at % TAB : columns(c);
            i += Character.charCount(c);
        }
        return at - column;
    }

    /** The text in one line of printable characters; tabs become spaces. */
    static String printable(String line) {
        if (isPlain(line)) {
            return line;
        }
        StringBuilder text = new StringBuilder(line.length() + 8);
        int column = 0;
        for (int i = 0; i < line.length(); ) {
            int c = line.codePointAt(i);
            if (c == '\t') {
                int spaces = TAB - column % TAB;
                text.repeat(' ', spaces);
                column += spaces;
            } else {
                text.appendCodePoint(shown(c));
                column += columns(c);
            }
            i += Character.charCount(c);
        }
        return text.toString();
    }

    /** The text followed by spaces up to a width in columns. */
    static String left(String text, int width) {
        return text + " ".repeat(Math.max(0, width - width(text)));
    }

    /** The text led by spaces up to a width in columns. */
    static String right(String text, int width) {
        return " ".repeat(Math.max(0, width - width(text))) + text;
    }

    private static boolean isPlain(String line) {
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c < ' ' || c > '~') {
                return false;
            }
        }
        return true;
    }

    private static int shown(int c) {
        return switch (Character.getType(c)) {
            case Character.CONTROL -> c < ' ' ? 0x2400 + c : 0xfffd;
            case Character.FORMAT, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR, Character.SURROGATE ->
                    0xfffd;
            default -> c;
        };
    }

    private static int columns(int c) {
        if (c < 0x300) {
            return 1;
        }
        int type = Character.getType(c);
        if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK) {
            return 0;
        }
        for (int i = 0; i < WIDE.length; i += 2) {
            if (c >= WIDE[i] && c <= WIDE[i + 1]) {
                return 2;
            }
        }
        return 1;
    }
}
