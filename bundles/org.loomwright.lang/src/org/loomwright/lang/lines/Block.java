// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.lines;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A sort of block, or the file itself, and what may stand in it.
 *
 * @param rule the name of the grammar rule of its lines: {@code WireFact}
 * @param title what people call it: {@code a wire}
 * @param starters what may start a line in it, by token type
 */
public record Block(String rule, String title, Map<Integer, Starter> starters) {

    /**
     * What may start a line.
     *
     * @param word the keyword
     * @param rule the name of the grammar rule of the line
     * @param opens the rule of the block that such a line may open; empty for a line that opens none
     */
    public record Starter(String word, String rule, Optional<String> opens) {
    }

    /** Returns the starter that a token type is here, or null. */
    public Starter starter(int type) {
        return starters.get(type);
    }

    /** Returns the words that may start a line here, in the order of the grammar. */
    public List<String> words() {
        return starters.values().stream().map(Starter::word).toList();
    }
}
