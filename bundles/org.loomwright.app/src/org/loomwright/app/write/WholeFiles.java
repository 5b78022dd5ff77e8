// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.write;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.app.BadCall;

/**
 * Writes files whole: each first under another name in the same folder, all of them moved into place when the last one
 * is written. A reader never sees half a file, and a full disk leaves what was there before. A file that already holds
 * the same bytes is left as it is. What a killed process left behind of a file is removed when the file is written
 * next.
 */
public final class WholeFiles {

    private final Map<Path, byte[]> files = new LinkedHashMap<>();

    /** Adds a file to be written. */
    public WholeFiles add(Path file, byte[] content) {
        files.put(file, content);
        return this;
    }

    /**
     * Writes sheets: the folders are made if need be; sources, folders and links are never written over.
     *
     * @return the files, in the order in which they were added
     * @throws BadCall if one cannot be written; then none has been moved into place, unless moving itself failed
     */
    public List<Path> write() throws BadCall {
        for (Path file : files.keySet()) {
            if (file.getFileName().toString().endsWith(".loom")) {
                throw new BadCall("will not write over a source: " + file);
            }
            if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)
                    && !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
                throw new BadCall("will not write over something that is not a plain file: " + file);
            }
        }
        return moveInto();
    }

    /**
     * Writes files that are not there yet; the folders are made if need be.
     *
     * @return the files, in the order in which they were added
     * @throws BadCall if one is there already or cannot be written; then none has been moved into place, unless moving
     *                 itself failed
     */
    public List<Path> create() throws BadCall {
        for (Path file : files.keySet()) {
            if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
                throw new BadCall("will not write over what is there: " + file);
            }
        }
        return moveInto();
    }

    /**
     * Rewrites sources in place, through links; each of them must exist.
     *
     * @return the files, in the order in which they were added
     * @throws BadCall if one cannot be written; then none has been moved into place, unless moving itself failed
     */
    public List<Path> rewrite() throws BadCall {
        Map<Path, byte[]> real = new LinkedHashMap<>();
        for (Map.Entry<Path, byte[]> each : files.entrySet()) {
            try {
                real.put(each.getKey().toRealPath(), each.getValue());
            } catch (IOException e) {
                throw cannot(each.getKey(), e);
            }
        }
        files.clear();
        files.putAll(real);
        return moveInto();
    }

    private List<Path> moveInto() throws BadCall {
        Map<Path, Path> waiting = new LinkedHashMap<>();
        Path at = null;
        try {
            for (Map.Entry<Path, byte[]> each : files.entrySet()) {
                at = each.getKey();
                Files.createDirectories(at.toAbsolutePath().getParent());
                Drafts drafts = Drafts.of(at);
                drafts.sweep();
                if (!holds(at, each.getValue())) {
                    Path draft = drafts.mine();
                    waiting.put(draft, at);
                    Files.write(draft, each.getValue(), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                    keepPermissions(at, draft);
                }
            }
            for (Map.Entry<Path, Path> each : List.copyOf(waiting.entrySet())) {
                at = each.getValue();
                move(each.getKey(), at);
                waiting.remove(each.getKey());
            }
            return new ArrayList<>(files.keySet());
        } catch (IOException e) {
            throw cannot(at, e);
        } finally {
            waiting.keySet().forEach(WholeFiles::discard);
        }
    }

    private static boolean holds(Path file, byte[] content) throws IOException {
        return Files.isRegularFile(file) && Files.size(file) == content.length
                && Arrays.equals(Files.readAllBytes(file), content);
    }

    private static void keepPermissions(Path old, Path draft) throws IOException {
        if (Files.exists(old) && Files.getFileStore(old).supportsFileAttributeView("posix")) {
            Files.setPosixFilePermissions(draft, Files.getPosixFilePermissions(old));
        }
    }

    private static void move(Path draft, Path file) throws IOException {
        try {
            Files.move(draft, file, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static void discard(Path draft) {
        try {
            Files.deleteIfExists(draft);
        } catch (IOException e) {
            // The reason that is already on its way says more.
        }
    }

    private static BadCall cannot(Path file, IOException e) {
        String reason = switch (e) {
            case AccessDeniedException denied -> "permission denied";
            case NotDirectoryException not -> not.getFile() + " is not a folder";
            case FileAlreadyExistsException there -> there.getFile() + " is in the way";
            case FileSystemException named when named.getReason() != null -> named.getReason();
            default -> e.getMessage() == null ? "input or output error" : e.getMessage();
        };
        return new BadCall("cannot write " + file + ": " + reason);
    }
}
