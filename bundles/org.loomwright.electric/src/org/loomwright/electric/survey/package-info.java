// SPDX-License-Identifier: EPL-2.0
/**
 * Every vehicle and every mode of a network: vehicles that do not differ in what carries current are solved once, and
 * each operating point is looked at for faults.
 */
package org.loomwright.electric.survey;
