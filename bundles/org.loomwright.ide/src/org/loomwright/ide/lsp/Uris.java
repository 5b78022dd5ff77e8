// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.io.IOException;
import java.net.URI;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.loomwright.stock.Stock;

/** Names of files as the client has them. A file that it opened keeps the name that the client gave. */
final class Uris {

    private final Map<Path, String> given = new ConcurrentHashMap<>();
    private Path stock;

    /** The file of a name; empty for one that names no file. */
    Optional<Path> path(String uri) {
        try {
            URI parsed = URI.create(uri);
            return "file".equals(parsed.getScheme()) ? Optional.of(Path.of(parsed).toAbsolutePath().normalize())
                    : Optional.empty();
        } catch (IllegalArgumentException | FileSystemNotFoundException e) {
            return Optional.empty();
        }
    }

    /** Notes how the client calls a file. */
    Optional<Path> noted(String uri) {
        Optional<Path> path = path(uri);
        path.ifPresent(file -> given.put(file, uri));
        return path;
    }

    /** The client's name of a file. */
    String of(Path file) {
        String known = given.get(file);
        return known == null ? file.toUri().toString() : known;
    }

    /**
     * The client's name of a file of a project; a file of the stock, which is no file, is written where it can be
     * looked at.
     */
    Optional<String> of(Path root, String name) {
        return name.startsWith(Stock.PREFIX) ? ofStock(name) : Optional.of(of(root.resolve(name)));
    }

    private synchronized Optional<String> ofStock(String name) {
        try {
            if (stock == null) {
                stock = Files.createTempDirectory("loomwright-stock");
                stock.toFile().deleteOnExit();
            }
            Path file = stock.resolve(name.substring(Stock.PREFIX.length()));
            if (!Files.exists(file)) {
                Files.writeString(file, Stock.textOf(name).orElse(""));
                file.toFile().setReadOnly();
                file.toFile().deleteOnExit();
            }
            return Optional.of(file.toUri().toString());
        } catch (IOException e) {
            return Optional.empty();
        }
    }
}
