// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

/**
 * What one vehicle geometry asks of one branch, in nanometres.
 *
 * @param vehicle number of the vehicle geometry
 * @param station where the factory's branch leaves the run that ours leaves: the trunk, or the vehicle's branch along
 *                which our parent branch lies
 * @param reach   what the branch needs beyond the run along the trunk: K + a
 * @param spare   what of that is certain to be used up: K - a
 */
public record Ask(int vehicle, long station, long reach, long spare) {
}
