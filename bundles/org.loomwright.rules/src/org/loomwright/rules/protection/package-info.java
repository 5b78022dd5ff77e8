// SPDX-License-Identifier: EPL-2.0
/**
 * Rules about what happens when too much current flows, and whether it finds its way back: fuses against wires, wires
 * without protection, loads without return. Each follows the connections of one choice of harnesses for all its
 * vehicles.
 */
package org.loomwright.rules.protection;
