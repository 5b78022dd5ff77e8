// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.Optional;
import org.loomwright.harness.clause.ClauseLine;

/** Takes a text apart into lines and blocks. Linear in the text. */
final class TextTree {

    private static final String MARK = "\ufeff";

    private final String text;
    private final TextNode file;
    private TextNode open;
    private StringBuilder lead = new StringBuilder();
    private int at;
    private int line = 1;

    private TextTree(String text) {
        this.text = text;
        this.at = text.startsWith(MARK) ? 1 : 0;
        this.file = new TextNode(null, "", ClauseLine.of(text.substring(0, at)), 0);
        this.open = file;
    }

    /** The file; empty when braces stand otherwise than at the end of a line that opens a block or on their own. */
    static Optional<TextNode> of(String text) {
        return new TextTree(text).read();
    }

    private Optional<TextNode> read() {
        while (at < text.length()) {
            Scan scan = new Scan(text, at);
            String whole = text.substring(at, scan.end);
            if (scan.first < 0) {
                lead.append(whole);
            } else if (scan.opening == 0 && scan.closing == 0 || scan.isClosedOnTheSpot()) {
                add(whole, scan);
            } else if (scan.opening == 1 && scan.closing == 0 && text.charAt(scan.last) == '{'
                    && scan.first != scan.last) {
                open = add(whole, scan);
            } else if (scan.closing == 1 && scan.opening == 0 && scan.first == scan.last && !open.isFile()) {
                open.tail = taken();
                open.close = whole;
                open = open.parent;
            } else {
                return Optional.empty();
            }
            line += (int) whole.chars().filter(c -> c == '\n').count();
            at = scan.end;
        }
        file.tail = taken();
        return open.isFile() ? Optional.of(file) : Optional.empty();
    }

    private TextNode add(String whole, Scan scan) {
        int number = line + (int) text.substring(at, scan.first).chars().filter(c -> c == '\n').count();
        TextNode node = new TextNode(open, taken(), ClauseLine.of(whole), number);
        open.children.add(node);
        return node;
    }

    private String taken() {
        String taken = lead.toString();
        lead = new StringBuilder();
        return taken;
    }

    /** One line, which goes on where a comment does, and the braces in it. */
    private static final class Scan {

        private final String text;
        private int end;
        private int first = -1;
        private int last = -1;
        private int opening;
        private int closing;

        Scan(String text, int from) {
            this.text = text;
            int at = from;
            while (at < text.length() && text.charAt(at) != '\n') {
                at = next(at);
            }
            end = Math.min(text.length(), at + 1);
        }

        /** The place behind a character, a quoted text or a comment. */
        private int next(int at) {
            char c = text.charAt(at);
            if (text.startsWith("//", at)) {
                return lineEnd(at);
            }
            if (text.startsWith("/*", at) && text.indexOf("*/", at + 2) >= 0) {
                return text.indexOf("*/", at + 2) + 2;
            }
            if (Character.isWhitespace(c) || c == '\u00a0') {
                return at + 1;
            }
            first = first < 0 ? at : first;
            last = at;
            opening += c == '{' ? 1 : 0;
            closing += c == '}' ? 1 : 0;
            return c == '"' ? quoted(at + 1) : at + 1;
        }

        private int lineEnd(int from) {
            int found = text.indexOf('\n', from);
            return found < 0 ? text.length() : found;
        }

        private int quoted(int from) {
            int at = from;
            int limit = lineEnd(from);
            while (at < limit && text.charAt(at) != '"') {
                at += text.charAt(at) == '\\' ? 2 : 1;
            }
            return Math.min(limit, at + 1);
        }

        boolean isClosedOnTheSpot() {
            return opening == 1 && closing == 1 && text.charAt(last) == '}' && text.charAt(first) != '{'
                    && text.charAt(first) != '}';
        }
    }
}
