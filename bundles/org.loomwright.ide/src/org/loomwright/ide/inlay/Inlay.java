// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.inlay;

/**
 * A few words that an editor shows in the text.
 *
 * @param offset  where: they stand before this character
 * @param text    the words
 * @param tooltip more about them; may be empty
 */
public record Inlay(int offset, String text, String tooltip) {
}
