// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.known;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.loomwright.app.BadCall;
import org.loomwright.app.Checked;
import org.loomwright.app.write.WholeFiles;
import org.loomwright.rules.Finding;

/**
 * A file of known findings: one fingerprint a line, in order, each followed by words for whoever reviews the file.
 * Lines that begin with {@code #} and empty lines say nothing.
 *
 * @param file    the file as the caller named it
 * @param entries the findings
 */
public record Baseline(String file, List<Entry> entries) {

    /** The largest file that is read, in bytes. */
    public static final int LARGEST = 32 << 20;

    private static final Pattern LINE = Pattern.compile("([0-9a-f]{32})(?:\\s+#\\s*(.*?))?\\s*");
    private static final String HEAD = """
            # Findings that were known when this file was written, one a line. Those that are listed do not count.
            # Only the first word of a line is read; the words behind it are for review.
            # version 1
            """;

    /** How findings are told apart in this file; raised when fingerprints are made otherwise. */
    private static final Pattern VERSION = Pattern.compile("# version (\\S+)\\s*");
    private static final String OURS = "1";

    /**
     * A known finding.
     *
     * @param fingerprint its fingerprint
     * @param words       what it said; may be empty
     */
    public record Entry(String fingerprint, String words) {
    }

    /**
     * A baseline beside the outcome of a check.
     *
     * @param baseline the baseline
     * @param known    how many of the findings of the check are in it
     * @param gone     its findings that are there no more
     */
    public record Compared(Baseline baseline, int known, List<Entry> gone) {
    }

    public Baseline {
        entries = List.copyOf(entries);
    }

    /**
     * Reads a baseline.
     *
     * @param base the folder that relative paths start from
     * @throws BadCall if the file is missing or is not what {@link #write} writes
     */
    public static Baseline read(Path base, String file) throws BadCall {
        try {
            Path path = base.resolve(file);
            if (file.isEmpty() || !Files.isRegularFile(path)) {
                throw new BadCall("no such baseline: " + (file.isEmpty() ? "''" : file)
                        + "; --write-baseline writes one");
            }
            if (Files.size(path) > LARGEST) {
                throw new BadCall("the baseline " + file + " is damaged: it has over " + LARGEST + " bytes");
            }
            return new Baseline(file, parse(file, Files.readString(path)));
        } catch (InvalidPathException e) {
            throw new BadCall("not a path: " + file);
        } catch (IOException e) {
            throw new BadCall("the baseline " + file + " cannot be read"
                    + (e instanceof java.nio.charset.CharacterCodingException ? ": it is not UTF-8 text" : ""));
        }
    }

    private static List<Entry> parse(String file, String text) throws BadCall {
        List<Entry> entries = new ArrayList<>();
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            Matcher version = VERSION.matcher(line);
            if (version.matches() && !version.group(1).equals(OURS)) {
                throw new BadCall("the baseline " + file + " is of version " + version.group(1)
                        + ", and this program reads version " + OURS + ": write it anew with --write-baseline");
            }
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            Matcher matcher = LINE.matcher(line);
            if (!matcher.matches()) {
                throw new BadCall("the baseline " + file + " is damaged: line " + (i + 1)
                        + " does not begin with a fingerprint");
            }
            entries.add(new Entry(matcher.group(1), matcher.group(2) == null ? "" : matcher.group(2)));
        }
        return entries;
    }

    /** Makes a baseline of all findings that can be known. */
    public static Baseline of(String file, Collection<Checked> all) {
        Map<String, Entry> entries = new TreeMap<>();
        for (Checked checked : all) {
            for (Finding finding : checked.all().findings()) {
                if (Checked.canBeKnown(finding)) {
                    entries.putIfAbsent(finding.fingerprint(), new Entry(finding.fingerprint(), words(finding)));
                }
            }
        }
        return new Baseline(file, List.copyOf(entries.values()));
    }

    private static String words(Finding finding) {
        String words = finding.severity().words() + " " + finding.rule() + " on " + finding.element() + ": "
                + finding.sentence();
        return words.replaceAll("[\\p{Cntrl}\\p{Cf}\\u2028\\u2029]+", " ").strip();
    }

    /**
     * Writes the file whole.
     *
     * @param base the folder that relative paths start from
     * @throws BadCall if it cannot be written
     */
    public void write(Path base) throws BadCall {
        StringBuilder text = new StringBuilder(HEAD);
        entries.forEach(entry -> text.append(entry.fingerprint()).append("  # ").append(entry.words()).append('\n'));
        try {
            if (file.isEmpty()) {
                throw new BadCall("the baseline needs a name");
            }
            new WholeFiles().add(base.resolve(file), text.toString().getBytes(StandardCharsets.UTF_8)).write();
        } catch (InvalidPathException e) {
            throw new BadCall("not a path: " + file);
        }
    }

    /** Returns the fingerprints. */
    public Set<String> fingerprints() {
        Set<String> fingerprints = new HashSet<>();
        entries.forEach(entry -> fingerprints.add(entry.fingerprint()));
        return fingerprints;
    }

    /** Holds the baseline beside projects whose known findings were set aside. */
    public Compared compare(Collection<Checked> all) {
        Set<String> there = new HashSet<>();
        all.forEach(checked -> there.addAll(checked.known()));
        Set<String> mine = fingerprints();
        int known = all.stream().mapToInt(checked -> (int) checked.known().stream().filter(mine::contains).count())
                .sum();
        return new Compared(this, known, entries.stream().filter(entry -> !there.contains(entry.fingerprint()))
                .toList());
    }
}
