// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Tells whether standard output and standard error end at a person. */
final class Terminal {

    private Terminal() {
    }

    /**
     * Asks the kernel where a descriptor leads, which costs nothing; where there is no such answer, asks the Java
     * runtime, which only knows about input and output together.
     *
     * @param descriptor 1 for standard output, 2 for standard error
     */
    static boolean at(int descriptor) {
        Path link = Path.of("/proc/self/fd/" + descriptor);
        if (Files.isSymbolicLink(link)) {
            try {
                String target = Files.readSymbolicLink(link).toString();
                return target.startsWith("/dev/pts/") || target.startsWith("/dev/tty") || target.equals("/dev/console");
            } catch (IOException e) {
                return false;
            }
        }
        return System.console() != null;
    }

    /** The encoding to print in: that of the terminal, and UTF-8 everywhere else, so that files do not differ. */
    static Charset encoding(boolean terminal, String property) {
        String name = System.getProperty(property);
        if (!terminal || name == null) {
            return StandardCharsets.UTF_8;
        }
        try {
            return Charset.forName(name);
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            return StandardCharsets.UTF_8;
        }
    }
}
