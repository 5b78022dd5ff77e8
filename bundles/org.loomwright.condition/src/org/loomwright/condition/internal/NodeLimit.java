// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

/** The table of a decision diagram is full. The diagram stays usable for what is in it. */
public final class NodeLimit extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final int mostNodes;

    NodeLimit(int mostNodes) {
        super("more than " + mostNodes + " decision nodes");
        this.mostNodes = mostNodes;
    }

    public int mostNodes() {
        return mostNodes;
    }
}
