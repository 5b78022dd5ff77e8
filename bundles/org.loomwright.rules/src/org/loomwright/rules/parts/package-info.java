// SPDX-License-Identifier: EPL-2.0
/**
 * Rules about catalogue parts where they are used: does the terminal take the wires, the seal the insulation, the part
 * the place that it is given, the device the supply? A figure that the catalogue does not state is no evidence.
 */
package org.loomwright.rules.parts;
