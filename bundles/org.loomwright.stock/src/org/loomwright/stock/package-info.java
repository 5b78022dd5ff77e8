// SPDX-License-Identifier: EPL-2.0
/**
 * The catalogue that is shipped: generic parts of the trade as source text, by kind, with where each figure comes from.
 * This room knows which part stands where; what the text means, the language says.
 */
package org.loomwright.stock;
