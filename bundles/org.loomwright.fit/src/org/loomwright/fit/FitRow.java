// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import org.loomwright.harness.Span;

/**
 * A row of the matrix: a place, and the harness's branch that serves it.
 *
 * @param place  the place
 * @param branch the harness's branch; empty for a place that it does not serve
 * @param trunk  the trunk on which the branch hangs, over other branches or not; empty for the datum and without a
 *               branch
 * @param span   the harness's branch, else the first drawing's branch that goes there
 */
public record FitRow(String place, String branch, String trunk, Span span) {
}
