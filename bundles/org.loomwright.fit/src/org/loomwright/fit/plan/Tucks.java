// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

/**
 * What is known of the tucks.
 *
 * @param low  by vehicle and breakout, the least that is taken up before it
 * @param high the most
 */
record Tucks(long[][] low, long[][] high) {
}
