// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.write;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The names under which a file is written before it is moved into place: hidden, in the same folder, with the number of
 * the process that writes. No such name is ever taken for a source.
 *
 * @param file the file
 */
record Drafts(Path file) {

    private static final String ENDING = ".part";

    static Drafts of(Path file) {
        return new Drafts(file);
    }

    /** The draft of this process. */
    Path mine() {
        return file.resolveSibling(start() + ProcessHandle.current().pid() + ENDING);
    }

    private String start() {
        return "." + file.getFileName() + ".";
    }

    /**
     * Removes what processes left behind that are no more. A draft with the number of this process is one of them: the
     * number was given anew. What cannot be listed or removed stays; it harms nobody.
     */
    void sweep() {
        Path folder = file.toAbsolutePath().getParent();
        try (DirectoryStream<Path> drafts = Files.newDirectoryStream(folder, this::isAbandoned)) {
            for (Path draft : drafts) {
                Files.deleteIfExists(draft);
            }
        } catch (IOException | java.nio.file.DirectoryIteratorException e) {
            // a leftover is hidden and never read
        }
    }

    private boolean isAbandoned(Path entry) {
        String name = entry.getFileName().toString();
        if (!name.startsWith(start()) || !name.endsWith(ENDING)) {
            return false;
        }
        int from = start().length();
        String number = name.substring(from, Math.max(from, name.length() - ENDING.length()));
        if (number.isEmpty() || number.length() > 10 || !number.chars().allMatch(c -> c >= '0' && c <= '9')) {
            return false;
        }
        long process = Long.parseLong(number);
        return process == ProcessHandle.current().pid()
                || ProcessHandle.of(process).filter(ProcessHandle::isAlive).isEmpty();
    }
}
