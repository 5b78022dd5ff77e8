// SPDX-License-Identifier: EPL-2.0
/**
 * What can be written at a place, filtered by what fits: the keywords of the block, names of the right sort, free
 * cavities, terminals that take the wire, places that the drawing reaches, choices that can still be.
 */
package org.loomwright.ide.complete;
