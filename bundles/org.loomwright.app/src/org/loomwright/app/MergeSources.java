// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.loomwright.app.revision.LinewiseMerge;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.merge.Marks;
import org.loomwright.compare.merge.Merged;
import org.loomwright.compare.merge.SourceMerger;
import org.loomwright.compare.merge.Version;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.SourceReader;
import org.loomwright.lang.text.TextDecoder;

/** Merges two versions of one source that come from a third. Safe for use by several threads. */
public final class MergeSources {

    private static final byte[] MARK = "\ufeff".getBytes(StandardCharsets.UTF_8);

    private final SourceReader reader;
    private final SourceMerger merger;

    /**
     * @param reader reads one source
     * @param merger merges what it states
     */
    public MergeSources(SourceReader reader, SourceMerger merger) {
        this.reader = reader;
        this.merger = merger;
    }

    /**
     * What came of it.
     *
     * @param merged     the text, and the conflicts as far as they are known by element
     * @param byLine     true when the braces of a version do not balance, so that it was merged line by line
     * @param conflicts  how many conflicts there are
     */
    public record Outcome(Merged merged, boolean byLine, int conflicts) {

        /** The bytes of the text. */
        public byte[] bytes() {
            return merged.text().getBytes(StandardCharsets.UTF_8);
        }
    }

    /**
     * Merges three versions.
     *
     * @param name what the source is called
     * @throws BadCall if a version is no text
     */
    public Outcome merge(String name, byte[] base, byte[] ours, byte[] theirs, Marks marks) throws BadCall {
        List<Version> versions = List.of(version(name + " as it was", base), version(name + " of ours", ours),
                version(name + " of theirs", theirs));
        Optional<Merged> merged = merger.merge(versions.get(0), versions.get(1), versions.get(2), marks);
        if (merged.isPresent()) {
            return new Outcome(merged.get(), false, merged.get().conflicts().size());
        }
        LinewiseMerge.Result plain = LinewiseMerge.of(versions.get(0).text(), versions.get(1).text(),
                versions.get(2).text(), marks);
        return new Outcome(new Merged(plain.text(), List.of()), true, plain.conflicts());
    }

    private Version version(String name, byte[] bytes) throws BadCall {
        TextDecoder.Decoded decoded = TextDecoder.decode(bytes);
        if (decoded.fault().isPresent()) {
            throw new BadCall("cannot merge " + name + ": " + decoded.fault().get().message());
        }
        boolean marked = bytes.length >= MARK.length && Arrays.equals(bytes, 0, MARK.length, MARK, 0, MARK.length);
        FactSheet facts = FactSheet.of(Project.link(List.of(reader.read(name, bytes))));
        return new Version((marked ? "\ufeff" : "") + decoded.text(), facts);
    }
}
