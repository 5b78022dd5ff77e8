// SPDX-License-Identifier: EPL-2.0
/**
 * The harness as a strip along its trunks: where runs, breakouts and their words go on a drawing that shows the order
 * and the proportions of the harness and nothing of its wires.
 */
package org.loomwright.geometry.strip;
