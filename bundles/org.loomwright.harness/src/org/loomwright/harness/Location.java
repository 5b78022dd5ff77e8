// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.Optional;

/**
 * Where on the harness something sits: at a named point, or at a station on a trunk or branch.
 *
 * @param point   a breakout, the datum's place, or the branch whose end is meant; empty when a run is given
 * @param run     the trunk or branch that it sits on; empty when a point is given
 * @param station distance from the start of the run; empty means its start
 */
public record Location(Optional<Ref> point, Optional<Ref> run, Optional<Measure> station) {
}
