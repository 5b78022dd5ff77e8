// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

/**
 * The name that an element declares for itself; unique in its drawing, harness, platform or catalogue whatever the
 * conditions.
 *
 * @param text the name; empty when the source left it out
 * @param span where it stands
 */
public record Name(String text, Span span) {

    /** A name that the source does not give. */
    public static final Name NONE = new Name("", Span.NONE);

    @Override
    public String toString() {
        return text;
    }
}
