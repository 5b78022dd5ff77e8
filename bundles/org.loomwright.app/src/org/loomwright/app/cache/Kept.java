// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import org.loomwright.app.Contents;
import org.loomwright.rules.Report;

/**
 * What is kept of a check.
 *
 * @param contents how much there is in the project
 * @param report   what was found; the vehicles of findings are there in words only
 */
public record Kept(Contents contents, Report report) {
}
