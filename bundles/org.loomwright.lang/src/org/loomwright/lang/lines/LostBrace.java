// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.lines;

import org.antlr.runtime.CommonToken;

/**
 * The last line that could have opened a block and did not, as long as nothing after it speaks against a brace that was
 * lost there.
 *
 * @param block the block that it would open
 * @param header its first token
 * @param column the column of that
 * @param endAt where its EOL token stands in the output
 * @param last its last token
 */
record LostBrace(Block block, CommonToken header, int column, int endAt, CommonToken last) {

    boolean holds(int type) {
        return block.starter(type) != null;
    }

    /**
     * Whether a line belongs in this block. A line that may also stand outside needs a deeper indentation and a brace
     * too few to tell.
     */
    boolean claims(int type, int lineColumn, OpenBlocks blocks) {
        boolean deeper = lineColumn > column;
        boolean tooFew = blocks.excess() < 0;
        if (!holds(type)) {
            return false;
        }
        return blocks.mayStandHere(type) ? tooFew && deeper
                : deeper || tooFew && (lineColumn <= 0 || lineColumn == column);
    }

    /** Whether a closing brace at a column is the one of this block. */
    boolean isClosedAt(int braceColumn, OpenBlocks blocks) {
        return blocks.excess() < 0 && (blocks.depth() == 0 || braceColumn >= column && braceColumn > blocks.column());
    }
}
