// SPDX-License-Identifier: EPL-2.0
/**
 * The shape of a drawing or harness: the tree of its trunks and branches, where each end of a wire sits, how a wire
 * runs and how long it is cut, what lies together in each stretch and how thick that is, and the copper in it.
 *
 * <p>Everything is computed from a linked {@link org.loomwright.harness.link.WiringView} and is immutable. Lengths are
 * exact; tolerances along a chain of dimensions add up worst case; a length that nobody knows stays unknown.
 */
package org.loomwright.geometry;
