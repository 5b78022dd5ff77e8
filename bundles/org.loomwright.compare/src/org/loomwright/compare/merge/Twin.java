// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.ArrayList;
import java.util.List;

/** One line as the three versions have it; null where a version does not. */
final class Twin {

    final TextNode base;
    final TextNode ours;
    final TextNode theirs;

    /** The line in whose block it stands in the result; null for the file, and for what is dropped. */
    Twin home;

    /** What stands in its block, in the order of the result. */
    List<Twin> children = new ArrayList<>();

    /** True where one side removed what the other changed. */
    boolean isTorn;

    Twin(TextNode base, TextNode ours, TextNode theirs) {
        this.base = base;
        this.ours = ours;
        this.theirs = theirs;
    }

    boolean isOnBothSides() {
        return ours != null && theirs != null;
    }

    /** The version that stands for it where only one is needed. */
    TextNode any() {
        return ours != null ? ours : theirs != null ? theirs : base;
    }
}
