// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.loomwright.lang.lines.Block;
import org.loomwright.lang.lines.Block.Starter;
import org.loomwright.lang.lines.Blocks;

/** What is read off the grammar about lines and blocks. */
class BlocksTest {
    private final Blocks blocks = Corpus.injector().getInstance(Blocks.class);

    @Test
    void wordsThatMayStartALine() {
        assertEquals(List.of("platform", "catalogue", "drawing", "harness", "kit", "waive", "practice"),
                blocks.file().words());
        assertEquals(List.of("size", "colour", "cable", "from", "to", "length", "legend", "as", "note"),
                blocks.block("WireFact").words());
        assertEquals(List.of("breakout", "barrier", "bend", "slack", "note"), blocks.block("RunFact").words());
        assertEquals(22 + 1, blocks.block("CatalogueFact").words().size());
    }

    @Test
    void blocksThatALineOpens() {
        assertEquals(Optional.of("PartFact"), starter("CatalogueFact", "cable").opens());
        assertEquals(Optional.empty(), starter("DrawingFact", "cable").opens());
        assertEquals(Optional.of("RunFact"), starter("HarnessFact", "branch").opens());
        assertEquals("a trunk or branch", blocks.block("RunFact").title());
        assertEquals("Waiver", starter("LoomFile", "waive").rule());
    }

    @Test
    void everyBlockIsReached() {
        assertEquals(List.of("LoomFile", "PlatformFact", "DeviceFact", "ModeFact", "CatalogueFact", "PartFact",
                "DrawingFact", "RunFact", "ConnectorFact", "CircuitFact", "WireFact", "HarnessFact", "KitFact",
                "PracticeFact"),
                blocks.inOrder().map(Block::rule).toList());
    }

    private Starter starter(String block, String word) {
        return blocks.block(block).starter(blocks.type(word));
    }
}
