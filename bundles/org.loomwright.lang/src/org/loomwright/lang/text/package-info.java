// SPDX-License-Identifier: EPL-2.0
/**
 * What comes before the language: from bytes to text, where its lines start, and the list of what is wrong with it.
 */
package org.loomwright.lang.text;
