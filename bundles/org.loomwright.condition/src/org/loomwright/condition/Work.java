// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

/**
 * How much work an analysis has done, for tests of growth. Equal calls need equal operations, and equal nodes as long
 * as no garbage had to make room.
 *
 * @param nodes decision nodes ever built
 * @param operations boolean operations carried out
 */
public record Work(long nodes, long operations) {
}
