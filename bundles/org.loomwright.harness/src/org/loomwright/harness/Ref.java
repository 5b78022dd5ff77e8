// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

/**
 * A name used for something declared elsewhere, kept as text: {@code J7 of dash64}.
 *
 * @param text  the name of the thing
 * @param owner the drawing, harness or catalogue that it is looked for in; empty for the writer's own surroundings
 * @param span  where the whole reference stands
 */
public record Ref(String text, String owner, Span span) {

    /** A reference without an owner. */
    public static Ref of(String text, Span span) {
        return new Ref(text, "", span);
    }

    @Override
    public String toString() {
        return owner.isEmpty() ? text : text + " of " + owner;
    }
}
