// SPDX-License-Identifier: EPL-2.0
/**
 * What every word of a text is by the grammar: a keyword, a name, a reference to a thing of some sort, a figure; and
 * what could stand at a place. Works line by line, so that whatever else is wrong with a text does not matter, and
 * lines that did not change are not looked at again. Editors ask this; reading sources does without.
 */
package org.loomwright.lang.words;
