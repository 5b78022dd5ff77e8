// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;

/**
 * A list of parts.
 *
 * @param name  the catalogue's name
 * @param title words for people
 * @param parts its parts, in source order
 * @param span  the whole element
 */
public record Catalogue(Name name, String title, List<Part> parts, Span span) implements Element {
}
