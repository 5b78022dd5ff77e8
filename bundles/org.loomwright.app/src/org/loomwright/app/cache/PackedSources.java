// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Source;
import org.loomwright.harness.Wiring;
import org.loomwright.lang.text.TextDecoder;

/** Sources as bytes, and many of them as one file with a checksum. */
final class PackedSources {

    private PackedSources() {
    }

    /** Packs what a source holds besides its text; only those that hold drawings and harnesses and no problem. */
    static Optional<byte[]> pack(Source source) {
        if (!source.problems().isEmpty() || source.elements().isEmpty()
                || !source.elements().stream().allMatch(Wiring.class::isInstance)) {
            return Optional.empty();
        }
        try {
            return Optional.of(new WiringPacking(new LineIndex(source.file(), source.text()))
                    .pack(source.elements().stream().map(Wiring.class::cast).toList()));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /**
     * The source of a file.
     *
     * @param bytes  the bytes of the file
     * @param packed what came of packing the source that they were read as
     * @return the equal of that source; empty when the packed bytes are damaged
     */
    static Optional<Source> unpack(String file, byte[] bytes, byte[] packed) {
        try {
            String text = TextDecoder.decode(bytes).text();
            return Optional.of(new Source(file, text,
                    List.copyOf(new WiringUnpacking(new LineIndex(file, text), packed).unpack()),
                    List.of()));
        } catch (RuntimeException e) {
            return Optional.empty();
        }
    }

    /** Packs packed sources by their prints; equal maps become equal bytes. */
    static byte[] pack(Map<String, byte[]> sources) {
        int size = Integer.BYTES;
        for (Map.Entry<String, byte[]> each : sources.entrySet()) {
            size += 2 * Integer.BYTES + each.getKey().length() + each.getValue().length;
        }
        ByteBuffer out = ByteBuffer.allocate(size).putInt(sources.size());
        new TreeMap<>(sources).forEach((print, packed) -> out.putInt(print.length())
                .put(print.getBytes(StandardCharsets.ISO_8859_1)).putInt(packed.length).put(packed));
        return Checksum.before(out.array());
    }

    /** Empty when the bytes are damaged. */
    static Optional<Map<String, byte[]>> unpack(byte[] bytes) {
        if (!Checksum.holds(bytes)) {
            return Optional.empty();
        }
        try {
            ByteBuffer in = ByteBuffer.wrap(bytes, Checksum.LENGTH, bytes.length - Checksum.LENGTH);
            int count = in.getInt();
            Map<String, byte[]> sources = new LinkedHashMap<>();
            for (int i = 0; i < count; i++) {
                String print = new String(next(in), StandardCharsets.ISO_8859_1);
                sources.put(print, next(in));
            }
            return Optional.of(sources);
        } catch (BufferUnderflowException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static byte[] next(ByteBuffer in) {
        int length = in.getInt();
        if (length < 0 || length > in.remaining()) {
            throw new IllegalArgumentException("damaged");
        }
        byte[] bytes = new byte[length];
        in.get(bytes);
        return bytes;
    }
}
