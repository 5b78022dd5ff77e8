// SPDX-License-Identifier: EPL-2.0
/** Rules about currents and voltages, mode by mode: they report what a survey of the network finds. */
package org.loomwright.rules.electric;
