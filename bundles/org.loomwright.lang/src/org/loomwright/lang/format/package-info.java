// SPDX-License-Identifier: EPL-2.0
/**
 * The canonical form of a text: white space and line ends only, never a word, a figure or a comment.
 */
package org.loomwright.lang.format;
