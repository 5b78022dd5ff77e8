// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import org.loomwright.compare.facts.FactSheet;

/**
 * One version of a file.
 *
 * @param text  its text, with a byte order mark where it has one
 * @param facts what it states by itself, as far as it can be read; tells renamed elements
 */
public record Version(String text, FactSheet facts) {
}
