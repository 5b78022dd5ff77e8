// SPDX-License-Identifier: EPL-2.0
/**
 * Two revisions of one file that come from a third are made one: element by element and fact by fact, on the text, so
 * that what nobody touched stays byte for byte.
 */
package org.loomwright.compare.merge;
