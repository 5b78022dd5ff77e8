// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

/**
 * The choices of a platform are tied to each other in so many ways that conditions on them need more memory than
 * allowed. Whoever runs an analysis turns this into a finding; the message is for people.
 */
public final class TooManyCombinations extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public TooManyCombinations(String message) {
        super(message);
    }
}
