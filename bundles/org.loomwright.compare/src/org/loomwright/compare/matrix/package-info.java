// SPDX-License-Identifier: EPL-2.0
/**
 * Drawings side by side: a row for each fact of each circuit, connector, device and place, a column for each drawing.
 * Rows are matched by what an element does and where it sits, since a factory numbers its circuits anew when it likes.
 */
package org.loomwright.compare.matrix;
