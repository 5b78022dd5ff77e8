// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** The documents of this repository, and projects in them. */
public final class Repository {

    private Repository() {
    }

    /** One reader for all tests of a class; making one takes half a second. */
    public static SourceReader reader() {
        return LoomReader.create();
    }

    /** The folder that holds {@code docs/examples}, from the working directory upwards. */
    public static Path root() {
        Path folder = Path.of(System.getProperty("user.dir")).toAbsolutePath();
        while (!Files.isDirectory(folder.resolve("docs/examples"))) {
            folder = folder.getParent();
            if (folder == null) {
                throw new IllegalStateException("no docs/examples above " + System.getProperty("user.dir"));
            }
        }
        return folder;
    }

    /** Opens a file or folder below {@code docs/examples}. */
    static OpenProject.Opened example(String name, SourceReader reader) throws BadCall {
        return open(root().resolve("docs/examples"), name, reader, 2);
    }

    static OpenProject.Opened open(Path base, String name, SourceReader reader, int threads) throws BadCall {
        return new OpenProject(reader, threads).open(ProjectPlace.findOne(base, name), Cancel.NEVER, Progress.NONE);
    }

    /** The single files of a folder below {@code docs/examples}, ordered by name. */
    public static List<Path> examples(String folder) throws IOException {
        return entries(root().resolve("docs/examples").resolve(folder)).stream().filter(Files::isRegularFile).toList();
    }

    /** The entries of a folder, ordered by name. */
    static List<Path> entries(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.sorted().toList();
        }
    }
}
