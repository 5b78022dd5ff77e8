// SPDX-License-Identifier: EPL-2.0
/**
 * The language of the sources: the only way from text to the snapshot, and the canonical form of the text.
 */
package org.loomwright.lang;
