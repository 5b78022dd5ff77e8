// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.lines;

import java.util.ArrayDeque;
import java.util.Deque;
import org.antlr.runtime.CommonToken;

/**
 * The blocks that are open while a text is read, and what indentation and the count of braces tell of lost ones.
 * Columns count from 1; 0 or less stands for a token that does not start its line.
 */
final class OpenBlocks {
    private final Deque<Open> stack = new ArrayDeque<>();
    private int excess;

    /** One block. The column is that of the header, the body's that of the first line within. */
    private static final class Open {
        private final Block block;
        private final CommonToken header;
        private final int column;
        private int bodyColumn;

        private Open(Block block, CommonToken header, int column) {
            this.block = block;
            this.header = header;
            this.column = column;
        }
    }

    /** Excess is how many more braces open than close in the whole text. */
    OpenBlocks(Block file, int excess) {
        this.excess = excess;
        stack.push(new Open(file, null, -1));
    }

    Block current() {
        return stack.peek().block;
    }

    /** The first token of the line that opened the current block; null in the file itself. */
    CommonToken header() {
        return stack.peek().header;
    }

    int column() {
        return stack.peek().column;
    }

    /** How many blocks are open. */
    int depth() {
        return stack.size() - 1;
    }

    void open(Block block, CommonToken header, int column) {
        stack.push(new Open(block, header, column));
    }

    void close() {
        stack.pop();
    }

    /** How many braces more open than close, those that were put in or left out counted. */
    int excess() {
        return excess;
    }

    void changeExcess(int by) {
        excess += by;
    }

    /** Takes notice of a line in the current block. */
    void line(int column) {
        Open open = stack.peek();
        open.bodyColumn = open.bodyColumn == 0 ? column : open.bodyColumn;
    }

    /** Whether a line that starts so may stand in the current block. */
    boolean mayStandHere(int type) {
        return current().starter(type) != null;
    }

    /** Whether it may stand in any block around the current one. */
    boolean mayStandFurtherOut(int type) {
        return stack.stream().skip(1).anyMatch(open -> open.block.starter(type) != null);
    }

    /** Whether it may stand in the block right around the current one, and its indentation says that it does. */
    boolean standsOutside(int type, int column) {
        return excess > 0 && isOutdented(column)
                && stack.stream().skip(1).limit(1).anyMatch(open -> open.block.starter(type) != null);
    }

    private boolean isIndented() {
        Open open = stack.peek();
        return open.column > 0 && open.bodyColumn > open.column;
    }

    private boolean isOutdented(int column) {
        return isIndented() && column > 0 && column <= column();
    }

    /**
     * Whether a line that may stand only further out shows that a closing brace was lost: by its indentation where the
     * block is indented, else by the count of braces.
     */
    boolean showsLostClosing(int column) {
        return isIndented() && column > 0 ? isOutdented(column) : excess > 0;
    }

    /** Whether a closing brace at a column closes not the current block but one around it. */
    boolean closesFurtherOut(int column) {
        return excess > 0 && column > 0 && column < column() && depth() > 1;
    }
}
