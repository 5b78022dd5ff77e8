// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.harness.clause.ClauseLine;

/**
 * A line with the block that it opens, or the whole file. Together the nodes hold every character of the text:
 * {@code lead}, {@code head}, the children, {@code tail} and {@code close}, in this order.
 */
final class TextNode {

    /** The block that it stands in; null for the file. */
    final TextNode parent;

    /** Blank lines and comments above it. */
    final String lead;

    /** The line itself; for the file a byte order mark or nothing. */
    final ClauseLine head;

    /** The line on which it begins, from 1; 0 for the file. */
    final int line;

    /** What stands in its block. */
    final List<TextNode> children = new ArrayList<>();

    /** What it is in the other versions. */
    Twin twin;

    /** Blank lines and comments above the closing brace, or at the end of the file. */
    String tail = "";

    /** The line with the closing brace. */
    String close = "";

    TextNode(TextNode parent, String lead, ClauseLine head, int line) {
        this.parent = parent;
        this.lead = lead;
        this.head = head;
        this.line = line;
    }

    boolean isFile() {
        return parent == null;
    }

    /** What it is called within the file: {@code wire 12a of circuit 12 of harness front}. */
    String label() {
        String own = head.subject();
        return parent.isFile() ? own : own + " of " + parent.label();
    }

    @Override
    public String toString() {
        return line + ": " + head.words();
    }
}
