// SPDX-License-Identifier: EPL-2.0
/**
 * How much current a wire may carry for ever: a published table, the ambient temperature and the bundle, each with its
 * source, and the derivation as text that goes with every figure.
 */
package org.loomwright.electric.ampacity;
