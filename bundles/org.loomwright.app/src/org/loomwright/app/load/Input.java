// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.load;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * One source that can be read.
 *
 * @param name    its name, relative to the project's folder, with {@code /} between folders
 * @param size    its size in bytes as far as it is known before reading; used to share out the work
 * @param content where its bytes come from
 */
public record Input(String name, long size, Content content) {

    /** Where bytes come from. May be opened by any thread. */
    @FunctionalInterface
    public interface Content {

        /**
         * Opens the bytes; the caller closes the stream.
         *
         * @throws IOException with a message for people if they cannot be read
         */
        InputStream open() throws IOException;
    }

    /** A blob of a revision or an editor's buffer. The array must not change afterwards. */
    public static Input of(String name, byte[] bytes) {
        return new Input(name, bytes.length, () -> new ByteArrayInputStream(bytes));
    }

    /** A file. Whether it can be read shows when it is opened. */
    public static Input of(String name, Path file) {
        long size;
        try {
            size = Files.size(file);
        } catch (IOException e) {
            size = 0;
        }
        return new Input(name, size, () -> open(file));
    }

    /** Something that has a name but cannot be read, with the reason. */
    public static Input unreadable(String name, String reason) {
        return new Input(name, 0, () -> {
            throw new IOException(reason);
        });
    }

    /** A pipe or device that happens to be named like a source would block for ever; only files are opened. */
    private static InputStream open(Path file) throws IOException {
        if (Files.isRegularFile(file)) {
            return Files.newInputStream(file);
        }
        if (!Files.exists(file)) {
            throw new NoSuchFileException(file.toString(), null, "it is a link to something that does not exist");
        }
        throw new IOException("it is not a regular file");
    }
}
