// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

/**
 * A stretch of source text.
 *
 * @param file   name of the file, as the loader was given it
 * @param offset characters before the first one of the span, from 0
 * @param length number of characters, may be 0
 * @param line   line of the first character, from 1
 * @param column column of the first character, from 1, counted in UTF-16 units
 */
public record Span(String file, int offset, int length, int line, int column) implements Comparable<Span> {

    /** The span of something that no source states. */
    public static final Span NONE = new Span("", 0, 0, 0, 0);

    /** Offset of the first character after the span. */
    public int end() {
        return offset + length;
    }

    /** Orders by file, then by place in it. */
    @Override
    public int compareTo(Span other) {
        int byFile = file.compareTo(other.file);
        if (byFile != 0) {
            return byFile;
        }
        int byOffset = Integer.compare(offset, other.offset);
        return byOffset != 0 ? byOffset : Integer.compare(length, other.length);
    }

    /** {@code file:line:column}, the form in which findings name a place. */
    public String at() {
        return file + ":" + line + ":" + column;
    }
}
