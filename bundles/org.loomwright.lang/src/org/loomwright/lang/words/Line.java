// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.words;

import java.util.List;
import java.util.Optional;

/**
 * One fact of a text, or the head of a block.
 *
 * @param index  its place among the lines of the text, from 0; lines that hold nothing are not counted
 * @param parent the line that opens the block in which it stands; -1 at the top
 * @param block  the sort of block in which it stands: {@code DrawingFact}
 * @param rule   the construct that it is: {@code Wire}; empty for a line that starts with nothing known
 * @param opens  the sort of block that it opens; empty for none
 * @param offset of its first character
 * @param end    offset behind its last word, an opening brace included
 * @param close  offset behind the brace that closes its block; the same as {@code end} without a block
 * @param read   whether all of it could be read
 * @param words  its words in order, without braces
 */
public record Line(int index, int parent, String block, String rule, String opens, int offset, int end, int close,
        boolean read, List<Word> words) {

    /** Whether it is the head of a block. */
    public boolean isHead() {
        return !opens.isEmpty();
    }

    /** The first word that is that property: {@code Wire.name}. */
    public Optional<Word> word(String property) {
        return words.stream().filter(word -> word.slot().is(property)).findFirst();
    }

    /** The first word of a property of the construct that the line is; empty text for none. */
    public String text(String feature) {
        for (Word word : words) {
            if (word.slot().feature().equals(feature) && word.slot().rule().equals(rule)) {
                return word.text();
            }
        }
        return "";
    }

    /** The word that its construct gives as a name, if it does. */
    public Optional<Word> name() {
        return words.stream().filter(word -> word.slot().sort() == Slot.Sort.NAME
                && word.slot().rule().equals(rule)).findFirst();
    }
}
