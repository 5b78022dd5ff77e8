// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.CRC32;

/** Which build of the program runs, to the byte; two that could judge differently are never taken for the same. */
final class Build {

    /** The property by which whoever starts the program names the build, after a hash of all its bytes. */
    static final String PROPERTY = "loomwright.build";

    private static final int CHUNK = 1 << 16;

    private Build() {
    }

    /** Returns what the starter says, else a hash of the class path; empty when that cannot be read. */
    static Optional<String> identity() {
        String said = System.getProperty(PROPERTY, "");
        return said.isEmpty() ? of(System.getProperty("java.class.path", "")) : Optional.of(said);
    }

    /** Returns a hash over names, sizes and contents of all files of a class path; empty when one cannot be read. */
    static Optional<String> of(String classPath) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] chunk = new byte[CHUNK];
            for (String entry : classPath.split(File.pathSeparator)) {
                Path path = Path.of(entry);
                if (entry.isEmpty() || !Files.exists(path)) {
                    continue;
                }
                for (Path file : files(path)) {
                    digest.update(path.relativize(file).toString().getBytes(StandardCharsets.UTF_8));
                    digest.update(sum(file, chunk));
                }
            }
            return Optional.of(HexFormat.of().formatHex(digest.digest()));
        } catch (IOException | NoSuchAlgorithmException | RuntimeException e) {
            return Optional.empty();
        }
    }

    private static List<Path> files(Path path) throws IOException {
        if (!Files.isDirectory(path)) {
            return List.of(path);
        }
        try (Stream<Path> walk = Files.walk(path)) {
            return walk.filter(Files::isRegularFile).sorted().toList();
        }
    }

    /** Size and CRC-32: that of a whole class path takes milliseconds, where SHA-256 of it takes a second. */
    private static byte[] sum(Path file, byte[] chunk) throws IOException {
        CRC32 sum = new CRC32();
        long size = 0;
        try (InputStream in = Files.newInputStream(file)) {
            for (int read = in.read(chunk); read >= 0; read = in.read(chunk)) {
                sum.update(chunk, 0, read);
                size += read;
            }
        }
        return ByteBuffer.allocate(2 * Long.BYTES).putLong(size).putLong(sum.getValue()).array();
    }
}
