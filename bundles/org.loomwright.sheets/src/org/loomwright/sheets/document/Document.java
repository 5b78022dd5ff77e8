// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.document;

import java.util.List;

/**
 * One document.
 *
 * @param name      its file name without an ending
 * @param title     what sort of document it is, by its trade name
 * @param subject   what it is about
 * @param landscape true when the page lies on its side
 * @param blocks    its pieces in order
 * @param data      its tables as data, one file or one sheet of a workbook each; none for one that is only looked at
 */
public record Document(String name, String title, String subject, boolean landscape, List<Block> blocks,
        List<Block.Grid> data) {

    public Document {
        blocks = List.copyOf(blocks);
        data = List.copyOf(data);
    }
}
