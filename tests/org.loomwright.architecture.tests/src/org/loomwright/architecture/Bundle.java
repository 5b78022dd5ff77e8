// SPDX-License-Identifier: EPL-2.0
package org.loomwright.architecture;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.Manifest;
import java.util.stream.Stream;

/** One of our bundles as it lies in the repository. */
record Bundle(Path folder) {

    /** The bundles of a repository, by name. */
    static List<Bundle> of(Path root) throws IOException {
        try (Stream<Path> folders = Files.list(root.resolve("bundles"))) {
            return folders.filter(f -> Files.exists(f.resolve("META-INF/MANIFEST.MF")))
                    .sorted().map(Bundle::new).toList();
        }
    }

    String name() {
        return folder.getFileName().toString();
    }

    String room() {
        return name().substring(AllowedUses.PREFIX.length());
    }

    /** The names in a manifest header, without their attributes and directives. */
    List<String> header(String header) throws IOException {
        try (InputStream in = Files.newInputStream(folder.resolve("META-INF/MANIFEST.MF"))) {
            String value = new Manifest(in).getMainAttributes().getValue(header);
            return value == null ? List.of() : clauses(value);
        }
    }

    private static List<String> clauses(String value) {
        List<String> names = new ArrayList<>();
        for (String clause : value.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)")) {
            names.add(clause.split(";", 2)[0].strip());
        }
        return names;
    }

    /** The compiled classes, generated ones included. */
    List<Path> classFiles() throws IOException {
        return files(folder.resolve("target/classes"), ".class");
    }

    /** The hand-written sources. */
    List<Path> sources() throws IOException {
        return files(folder.resolve("src"), ".java");
    }

    /** The packages with hand-written sources. */
    List<String> packages() throws IOException {
        Path src = folder.resolve("src");
        return sources().stream()
                .map(s -> src.relativize(s.getParent()).toString().replace('/', '.'))
                .distinct().toList();
    }

    private static List<Path> files(Path folder, String ending) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(f -> f.toString().endsWith(ending)).sorted().toList();
        }
    }
}
