// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.consequence;

import org.loomwright.compare.Comparison;
import org.loomwright.harness.link.Project;

/**
 * Two sides and what is different between them.
 *
 * @param old        the old side
 * @param now        the new side
 * @param comparison what changed
 */
public record Revision(Project old, Project now, Comparison comparison) {
}
