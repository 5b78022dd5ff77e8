// SPDX-License-Identifier: EPL-2.0
/**
 * One side of a comparison as elements with facts: a snapshot without places, order and spelling, in which every value
 * that is a name knows what it names. Equal sheets say the same of the same vehicles.
 */
package org.loomwright.compare.facts;
