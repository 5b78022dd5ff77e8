// SPDX-License-Identifier: EPL-2.0
/**
 * Which element of one side is which of the other: the same name first, then the most alike, so that a rename, a move
 * and a swap are seen as such.
 */
package org.loomwright.compare.match;
