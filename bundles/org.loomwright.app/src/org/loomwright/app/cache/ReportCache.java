// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Silence;
import org.loomwright.rules.Silences;

/**
 * A folder of reports. Whatever goes wrong with it is no matter: a report that cannot be read is made anew, one that
 * cannot be written is not kept. Several processes may use one folder: a file is moved into place whole. Past its bound
 * the folder loses those that nobody asked for the longest. Safe for use by several threads.
 */
public final class ReportCache {

    /** The usual bound, in bytes. A report of 150 findings takes about 40 kB. */
    public static final long USUAL_BOUND = 64L << 20;

    private static final String ENDING = ".report";
    private static final String SILENCES = ".silences";
    private static final String SOURCES = ".sources";
    private static final String DRAFT = ".part";
    private static final Duration ABANDONED = Duration.ofHours(1);

    private final Path folder;
    private final String tool;
    private final long bound;

    /**
     * @param folder where reports are; made when the first one is kept
     * @param tool   which build of the program this is; another one never gets the same reports
     * @param bound  the most bytes that reports may take together
     */
    public ReportCache(Path folder, String tool, long bound) {
        this.folder = folder;
        this.tool = tool;
        this.bound = bound;
    }

    /**
     * The prints of files: no two that differ have the same one.
     *
     * @param files their bytes by name, in the order in which they are read
     */
    public static Map<String, String> prints(Map<String, byte[]> files) {
        return ReportKey.of(files);
    }

    /**
     * Names the report of some files.
     *
     * @param prints their prints by name, in the order in which they are read
     */
    public String key(Map<String, String> prints, Settings settings) {
        return ReportKey.of(tool, prints, settings);
    }

    /** Returns the report of that name; empty when there is none or it is damaged. */
    public Optional<Kept> find(String key) {
        return read(key + ENDING).flatMap(ReportBytes::unpack);
    }

    /** Keeps a report. */
    public void keep(String key, Kept kept) {
        write(key + ENDING, ReportBytes.pack(kept));
    }

    /** Returns which questions of a scope are known to have no answer; none when nothing is kept or it is damaged. */
    public Silences silences(String scope) {
        return read(ReportKey.of(tool, scope) + SILENCES).flatMap(SilenceBytes::unpack).map(Silences::new)
                .orElse(Silences.NONE);
    }

    /** Keeps them in place of those that were kept for the scope. */
    public void keepSilences(String scope, List<Silence> silences) {
        write(ReportKey.of(tool, scope) + SILENCES, SilenceBytes.pack(silences));
    }

    /** Returns the packed drawings and harnesses of a project by their prints; none when none are kept. */
    Map<String, byte[]> sources(String project) {
        return read(ReportKey.of(tool, project) + SOURCES).flatMap(PackedSources::unpack).orElse(Map.of());
    }

    /** Keeps them in place of those that were kept for the project. */
    void keepSources(String project, Map<String, byte[]> sources) {
        write(ReportKey.of(tool, project) + SOURCES, PackedSources.pack(sources));
    }

    private Optional<byte[]> read(String name) {
        Path file = folder.resolve(name);
        try {
            if (!Files.isRegularFile(file)) {
                return Optional.empty();
            }
            byte[] bytes = Files.readAllBytes(file);
            touch(file);
            return Optional.of(bytes);
        } catch (IOException | RuntimeException e) {
            return Optional.empty();
        }
    }

    private void write(String name, byte[] bytes) {
        if (bytes.length > bound) {
            return;
        }
        Path draft = null;
        try {
            Files.createDirectories(folder);
            draft = Files.createTempFile(folder, name, DRAFT);
            Files.write(draft, bytes);
            Files.move(draft, folder.resolve(name), StandardCopyOption.ATOMIC_MOVE,
                    StandardCopyOption.REPLACE_EXISTING);
            bound();
        } catch (IOException | RuntimeException e) {
            if (draft != null) {
                delete(draft);
            }
        }
    }

    private static void touch(Path file) {
        try {
            Files.setLastModifiedTime(file, FileTime.fromMillis(System.currentTimeMillis()));
        } catch (IOException e) {
            // It goes earlier than it might.
        }
    }

    private record Entry(Path file, long size, FileTime time) {
    }

    private void bound() throws IOException {
        List<Entry> entries = new ArrayList<>();
        long sum = 0;
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
            for (Path file : files) {
                Optional<Entry> entry = entry(file);
                if (entry.isPresent()) {
                    entries.add(entry.get());
                    sum += entry.get().size();
                }
            }
        }
        entries.sort(Comparator.comparing(Entry::time).thenComparing(entry -> entry.file().toString()));
        for (Entry entry : entries) {
            if (sum <= bound) {
                return;
            }
            delete(entry.file());
            sum -= entry.size();
        }
    }

    /** A report as it lies there; none for other files, for one that is gone, and for a draft, which may go at once. */
    private static Optional<Entry> entry(Path file) {
        String name = file.getFileName().toString();
        if (!name.endsWith(ENDING) && !name.endsWith(SILENCES) && !name.endsWith(SOURCES)
                && !name.endsWith(DRAFT)) {
            return Optional.empty();
        }
        try {
            BasicFileAttributes facts = Files.readAttributes(file, BasicFileAttributes.class);
            if (name.endsWith(DRAFT)) {
                if (facts.lastModifiedTime().toMillis() + ABANDONED.toMillis() < System.currentTimeMillis()) {
                    delete(file);
                }
                return Optional.empty();
            }
            return Optional.of(new Entry(file, facts.size(), facts.lastModifiedTime()));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private static void delete(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // Another process holds it, or has deleted it.
        }
    }
}
