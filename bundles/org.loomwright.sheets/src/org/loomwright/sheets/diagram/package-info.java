// SPDX-License-Identifier: EPL-2.0
/** Lays circuit diagrams out: what stands where, and how the wires run between. */
package org.loomwright.sheets.diagram;
