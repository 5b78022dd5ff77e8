// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.loomwright.lang.Formatter;
import org.loomwright.lang.SourceReader;

/** Whatever the documents show in the language can be read. */
class DocumentsTest {

    private static final String FENCE = "```";

    private final SourceReader reader = Repository.reader();

    private record Block(String where, String text) {
    }

    @TestFactory
    Stream<DynamicTest> everyBlockCanBeRead() throws IOException {
        List<Block> blocks = new ArrayList<>();
        try (Stream<Path> files = Files.walk(Repository.root().resolve("docs"))) {
            for (Path file : files.filter(each -> each.toString().endsWith(".md")).sorted().toList()) {
                collect(file, blocks);
            }
        }
        assertTrue(blocks.size() > 10, "the documents show the language");
        return blocks.stream().map(block -> DynamicTest.dynamicTest(block.where(), () -> assertEquals(List.of(),
                reader.read(block.where(), block.text().getBytes(StandardCharsets.UTF_8)).problems())));
    }

    @TestFactory
    Stream<DynamicTest> everyExampleIsFormatted() throws IOException {
        List<Path> examples = new ArrayList<>();
        try (Stream<Path> files = Files.walk(Repository.root().resolve("docs/examples"))) {
            files.filter(each -> each.toString().endsWith(".loom")).sorted().forEach(examples::add);
        }
        assertTrue(examples.size() > 10, "there are examples");
        return examples.stream().map(example -> DynamicTest.dynamicTest(example.getFileName().toString(), () -> {
            String text = Files.readString(example);
            assertEquals(Formatter.format(text), text);
        }));
    }

    private static void collect(Path file, List<Block> blocks) throws IOException {
        StringBuilder block = null;
        int line = 0;
        for (String text : Files.readAllLines(file)) {
            line++;
            if (block == null && text.strip().equals(FENCE + "loom")) {
                block = new StringBuilder();
            } else if (block != null && text.strip().equals(FENCE)) {
                blocks.add(new Block(file.getFileName() + " before line " + line, block.toString()));
                block = null;
            } else if (block != null) {
                block.append(text).append('\n');
            }
        }
        assertTrue(block == null, "a block that does not end in " + file);
    }
}
