// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;

/**
 * The snapshot of one source file, built from that file alone.
 *
 * @param file     the name that the loader was given
 * @param text     the decoded text without a byte order mark; spans count its characters
 * @param elements its top-level elements in order
 * @param problems what is wrong with the text, ordered by place
 */
public record Source(String file, String text, List<Element> elements, List<Problem> problems) {
}
