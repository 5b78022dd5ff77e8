// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.clause;

import java.util.ArrayList;
import java.util.List;

/** The words, figures, quoted texts and signs of one line, each with what stands before it. Linear in the line. */
final class LineWords {

    private final String line;
    private final List<Word> words = new ArrayList<>();
    private String rest = "";

    private LineWords(String line) {
        this.line = line;
    }

    /** One of them; comments between them are white space. */
    record Word(String space, String text) {

        boolean isQuoted() {
            return text.startsWith("\"");
        }

        boolean isNumber() {
            return text.chars().allMatch(c -> c >= '0' && c <= '9');
        }

        boolean isWord() {
            return isPart(text.charAt(0));
        }
    }

    /** The words of a line, and what stands behind the last one. */
    record Read(List<Word> words, String rest) {
    }

    static Read of(String line) {
        LineWords reading = new LineWords(line);
        reading.read();
        return new Read(List.copyOf(reading.words), reading.rest);
    }

    private void read() {
        int at = 0;
        while (true) {
            int start = space(at);
            if (start >= line.length()) {
                rest = line.substring(at);
                return;
            }
            int end = end(start);
            words.add(new Word(line.substring(at, start), line.substring(start, end)));
            at = end;
        }
    }

    /** The end of white space and comments. */
    private int space(int from) {
        int at = from;
        while (at < line.length()) {
            if (line.startsWith("/*", at)) {
                int end = line.indexOf("*/", at + 2);
                at = end < 0 ? line.length() : end + 2;
            } else if (line.startsWith("//", at)) {
                int end = line.indexOf('\n', at);
                at = end < 0 ? line.length() : end;
            } else if (Character.isWhitespace(line.charAt(at)) || line.charAt(at) == '\u00a0'
                    || line.charAt(at) == '\ufeff') {
                at++;
            } else {
                return at;
            }
        }
        return at;
    }

    private int end(int start) {
        char first = line.charAt(start);
        if (first == '"') {
            int at = start + 1;
            while (at < line.length() && line.charAt(at) != '"' && line.charAt(at) != '\n') {
                at += line.charAt(at) == '\\' && at + 1 < line.length() ? 2 : 1;
            }
            return Math.min(line.length(), at < line.length() && line.charAt(at) == '"' ? at + 1 : at);
        }
        if (isPart(first)) {
            int at = start + 1;
            while (at < line.length() && (isPart(line.charAt(at)) || line.charAt(at) == '-'
                    && at + 1 < line.length() && Character.isLetter(line.charAt(at + 1)))) {
                at++;
            }
            return at;
        }
        return line.startsWith("..", start) ? start + 2 : start + 1;
    }

    private static boolean isPart(char c) {
        return Character.isLetterOrDigit(c) || c == '_' || c == '\u00b0' || c == '\u00b2' || c == '\u00b3';
    }
}
