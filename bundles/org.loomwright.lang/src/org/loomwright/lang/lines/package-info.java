// SPDX-License-Identifier: EPL-2.0
/**
 * The lines and blocks of the language on the level of tokens: which word may start a line in which block, where a line
 * ends, which braces are missing. What is settled here keeps an error on its line.
 */
package org.loomwright.lang.lines;
