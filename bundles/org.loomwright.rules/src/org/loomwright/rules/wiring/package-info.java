// SPDX-License-Identifier: EPL-2.0
/**
 * Rules about one drawing or harness: do all wires go somewhere, does everything fit into its cavity, is each name used
 * once? Each looks at all vehicles at once through conditions.
 */
package org.loomwright.rules.wiring;
