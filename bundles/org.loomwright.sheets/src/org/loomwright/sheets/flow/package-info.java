// SPDX-License-Identifier: EPL-2.0
/** Pictures of solved circuits for a screen: which way the current takes, with its voltages and currents. */
package org.loomwright.sheets.flow;
