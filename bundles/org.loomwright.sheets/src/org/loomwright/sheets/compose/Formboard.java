// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import org.loomwright.sheets.document.Document;
import org.loomwright.sheets.document.Drawing;

/**
 * A formboard: the document, and the whole board in one drawing.
 *
 * @param document overview, tables and the sheets of the board
 * @param board    the board at full size
 */
public record Formboard(Document document, Drawing board) {
}
