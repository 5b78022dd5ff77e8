// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.navigate;

import org.loomwright.harness.Span;

/**
 * A word that names the thing that was asked about.
 *
 * @param span     the word
 * @param declares whether it gives the name, rather than uses it
 */
public record Occurrence(Span span, boolean declares) {
}
