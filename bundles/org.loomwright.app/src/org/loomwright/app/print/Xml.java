// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

/**
 * Makes an XML 1.0 text, two spaces a level, LF. Characters that XML cannot hold, not even written as a number, become
 * U+FFFD; a reader that knows no DTD reads it.
 */
final class Xml {

    private final StringBuilder out = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    private int level;

    /** Begins an element; attributes are names and values in turn. */
    Xml begin(String name, Object... attributes) {
        tag(name, attributes).append(">\n");
        level++;
        return this;
    }

    /** Ends an element that was begun. */
    Xml end(String name) {
        level--;
        indent().append("</").append(name).append(">\n");
        return this;
    }

    /** An element with nothing in it. */
    Xml empty(String name, Object... attributes) {
        tag(name, attributes).append("/>\n");
        return this;
    }

    /** An element with text in it. */
    Xml text(String name, String text, Object... attributes) {
        tag(name, attributes).append('>');
        escape(text, false);
        out.append("</").append(name).append(">\n");
        return this;
    }

    private StringBuilder tag(String name, Object... attributes) {
        indent().append('<').append(name);
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ').append(attributes[i]).append("=\"");
            escape(attributes[i + 1].toString(), true);
            out.append('"');
        }
        return out;
    }

    private StringBuilder indent() {
        return out.repeat(' ', 2 * level);
    }

    private void escape(String text, boolean attribute) {
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            i += Character.charCount(c);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\r' -> out.append("&#13;");
                case '\n', '\t' -> out.append(attribute ? "&#" + c + ";" : Character.toString(c));
                default -> out.appendCodePoint(isCharacter(c) ? c : 0xfffd);
            }
        }
    }

    /** The production Char of XML 1.0. */
    private static boolean isCharacter(int c) {
        return c >= 0x20 && c <= 0xd7ff || c >= 0xe000 && c <= 0xfffd || c >= 0x10000;
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
