// SPDX-License-Identifier: EPL-2.0
/**
 * Direct-current networks as numbers: elements with a current for each voltage, nodal equations, damped Newton steps.
 * It knows neither vehicles nor wires.
 */
package org.loomwright.electric.solve;
