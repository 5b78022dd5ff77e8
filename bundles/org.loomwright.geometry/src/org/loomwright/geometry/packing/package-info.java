// SPDX-License-Identifier: EPL-2.0
/**
 * Finds a small circle that holds circles of given diameters without overlap: the section of a bundle of round wires.
 *
 * <p>Every answer is a placement that can be looked at, and its diameter is worked out from that placement, so it can
 * always be reached; that none is smaller is not claimed. The search is seeded and uses nothing but sums, products,
 * quotients and square roots, so equal input gives equal bits on any machine. Units are those of the diameters given.
 */
package org.loomwright.geometry.packing;
