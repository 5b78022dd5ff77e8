// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.loomwright.app.Repository;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;

/** Sides of comparisons: texts by file name, and the projects that they make. */
final class Sides {

    private final SourceReader reader = LoomReader.create();

    /** The project of some files. */
    Project project(Map<String, String> files) {
        List<Source> sources = new ArrayList<>();
        files.forEach((name, text) -> sources.add(reader.read(name, text.getBytes(StandardCharsets.UTF_8))));
        return Project.link(sources);
    }

    /** The files of a folder, by name. */
    static Map<String, String> files(Path folder) {
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> entries = Files.list(folder)) {
            for (Path file : entries.filter(each -> each.toString().endsWith(".loom")).toList()) {
                files.put(file.getFileName().toString(), Files.readString(file));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return files;
    }

    /** The files of the largest example. */
    static Map<String, String> orrin() {
        return files(Repository.root().resolve("docs/examples/orrin"));
    }

    /** The files with one piece of text of one of them replaced, which stands there in exactly one place. */
    static Map<String, String> edited(Map<String, String> files, String file, String from, String to) {
        Map<String, String> edited = new TreeMap<>(files);
        edited.putAll(edited(Map.of(file, files.get(file)), from, to));
        return edited;
    }

    /** The files with one piece of text replaced, which stands in exactly one place. */
    static Map<String, String> edited(Map<String, String> files, String from, String to) {
        Map<String, String> edited = new TreeMap<>(files);
        int hits = 0;
        for (Map.Entry<String, String> each : files.entrySet()) {
            int at = each.getValue().indexOf(from);
            if (at >= 0) {
                hits += each.getValue().indexOf(from, at + 1) >= 0 ? 2 : 1;
                edited.put(each.getKey(), each.getValue().replace(from, to));
            }
        }
        if (hits != 1) {
            throw new IllegalArgumentException("stands " + hits + " times: " + from);
        }
        return edited;
    }
}
