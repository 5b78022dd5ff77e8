// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

/** What a connection does when too much current flows through it. */
public enum Protection {
    /** Nothing. */
    NONE("none"),
    /** A fusible link: it opens on a short circuit, and never counts for overload. */
    LINK("fusible link"),
    /** A breaker that resets itself or not. */
    BREAKER("breaker"),
    /** A fuse. */
    FUSE("fuse");

    private final String words;

    Protection(String words) {
        this.words = words;
    }

    /** Returns the words for people. */
    public String words() {
        return words;
    }

    /** Returns whether it limits a lasting overload, not only a short circuit. */
    public boolean limitsOverload() {
        return this == BREAKER || this == FUSE;
    }
}
