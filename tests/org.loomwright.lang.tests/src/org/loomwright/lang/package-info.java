// SPDX-License-Identifier: EPL-2.0
/**
 * Tests of the language. The corpus in the resources uses every construct of the grammar; most tests take it, damage
 * it, and look at what is left.
 */
package org.loomwright.lang;
