// SPDX-License-Identifier: EPL-2.0
/**
 * Numbers with units, as their author wrote them and as exact values: lengths in whole nanometres, conductor sizes that
 * never lose their system, tolerances, and the two small interfaces through which every long computation is cancelled
 * and reports its progress. As the lowest room it also holds the one answer to "did you mean". Everything here is
 * immutable and depends on nothing but the Java library.
 */
package org.loomwright.quantity;
