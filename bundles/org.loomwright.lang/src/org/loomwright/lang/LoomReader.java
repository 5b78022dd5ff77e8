// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import java.util.List;
import org.eclipse.xtext.parser.IParseResult;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Source;
import org.loomwright.lang.lines.Blocks;
import org.loomwright.lang.parser.LineParser;
import org.loomwright.lang.snapshot.SnapshotBuilder;
import org.loomwright.lang.snapshot.SnapshotBuilder.Built;
import org.loomwright.lang.snapshot.Units;
import org.loomwright.lang.text.Problems;
import org.loomwright.lang.text.TextDecoder;
import org.loomwright.lang.text.TextDecoder.Decoded;
import org.loomwright.lang.words.WordReader;
import org.loomwright.model.loom.LoomFile;

/**
 * Reads sources of the language: decodes, parses, builds the snapshot, and drops the tree.
 *
 * <p>Refused before parsing, with a problem and without elements: more than 8 MiB, bytes that are no UTF-8 text, braces
 * nested more than 20 or parentheses more than 50 deep. Equal bytes give equal sources. Time and space are O(bytes).
 *
 * <p>Thread contract: one reader may be used by any number of threads at once.
 */
public final class LoomReader implements SourceReader {
    private final LineParser parser;
    private final SnapshotBuilder builder;
    private final Blocks blocks;

    private LoomReader(ReaderParts parts) {
        parser = parts.parser();
        builder = new SnapshotBuilder(parts.grammar());
        blocks = parts.blocks();
    }

    /** Sets up what reading needs and returns a reader; this takes as long as reading a small project, so keep it. */
    public static synchronized LoomReader create() {
        LoomReader reader = new LoomReader(new ReaderParts());
        // a first text, so that whatever is made on first use is made before threads share it
        reader.read("", new byte[] {'\n'});
        return reader;
    }

    /** Returns a reader that remembers what it read, for texts that are read again after each edit. */
    public EditedReader forEdits() {
        return new EditedReader(this);
    }

    /** Returns a reader that tells what single words are, for editors. */
    public WordReader words() {
        return new WordReader(blocks);
    }

    @Override
    public Source read(String file, byte[] bytes) {
        Decoded decoded = TextDecoder.decode(bytes);
        if (decoded.fault().isEmpty()) {
            return reading(file, decoded.text()).source();
        }
        Problems problems = new Problems(new LineIndex(file, decoded.text()));
        decoded.fault().ifPresent(fault -> problems.add(fault.code(), 0, 0, fault.message(), fault.advice()));
        return new Source(file, decoded.text(), List.of(), problems.sorted());
    }

    /** Reads a text. */
    Reading reading(String file, String text) {
        Problems problems = new Problems(new LineIndex(file, text));
        IParseResult tree = parser.parse(problems);
        Built built = tree != null && tree.getRootASTElement() instanceof LoomFile root ? builder.build(root, problems)
                : new Built(List.of(), new Units());
        return new Reading(file, text, built.elements(), problems.found(), problems.isBalanced(), built.units());
    }
}
