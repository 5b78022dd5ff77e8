// SPDX-License-Identifier: EPL-2.0
/** Lays the tree of a harness out on a flat board: pure geometry, true lengths, no crossings. */
package org.loomwright.sheets.board;
