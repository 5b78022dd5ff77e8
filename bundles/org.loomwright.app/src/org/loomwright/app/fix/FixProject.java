// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fix;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.loomwright.app.BadCall;
import org.loomwright.app.OpenProject;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.app.load.StockShelf;
import org.loomwright.app.write.WholeFiles;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.Settings;

/**
 * Makes the changes that findings offer, as far as there is exactly one certain change for a finding, and checks again,
 * until nothing changes. Findings that are inherited, accepted or set aside are left alone. Writes nothing before
 * {@link Fixed#write}. Safe for use by several threads; takes at most {@value #MOST_ROUNDS} checks and one more.
 */
public final class FixProject {

    /** So often fixes may lead to fixes. */
    private static final int MOST_ROUNDS = 10;

    private final SourceReader reader;
    private final RuleEngine rules;
    private final int threads;
    private final StockShelf stock;

    /**
     * @param reader  reads one source
     * @param rules   find what is to be mended
     * @param threads the most threads to read with; the result does not depend on it
     */
    public FixProject(SourceReader reader, RuleEngine rules, int threads) {
        this.reader = reader;
        this.rules = rules;
        this.threads = threads;
        this.stock = new StockShelf(reader);
    }

    /**
     * What came of it.
     *
     * @param before what was found before anything was changed
     * @param opened the project as it is afterwards
     * @param report what is found in it afterwards
     * @param made   the changes that were made, in order
     * @param left   changes that findings offer and that are left to a person: guesses, and one of several
     * @param texts  the texts that have changed, by file
     */
    public record Fixed(Report before, Opened opened, Report report, List<Change> made, List<Change> left,
            Map<String, Rewritten> texts) {

        /**
         * Writes the changed files, each of them whole.
         *
         * @throws BadCall if a file is no longer what was read, or cannot be written; then none is written
         */
        public void write() throws BadCall {
            WholeFiles files = new WholeFiles();
            for (Map.Entry<String, Rewritten> each : texts.entrySet()) {
                Path file = opened.place().root().resolve(each.getKey());
                if (!holds(file, each.getValue().oldBytes())) {
                    throw new BadCall("changed on disk in the meantime: " + opened.place().prefix() + each.getKey()
                            + "; nothing was written, call again");
                }
                files.add(file, each.getValue().newBytes());
            }
            files.rewrite();
        }

        private static boolean holds(Path file, byte[] bytes) {
            try {
                return Arrays.equals(Files.readAllBytes(file), bytes);
            } catch (IOException e) {
                return false;
            }
        }
    }

    /** A file before and after; the texts are without a byte order mark. */
    public record Rewritten(byte[] oldBytes, byte[] newBytes, String oldText, String newText) {
    }

    /**
     * Mends a project in memory.
     *
     * @throws BadCall if not one file could be read
     */
    public Fixed fix(ProjectPlace place, Settings settings, Cancel cancel, Progress progress) throws BadCall {
        Map<String, Text> texts = new ConcurrentHashMap<>();
        Opened opened = new OpenProject((name, bytes) -> {
            Text.of(bytes).ifPresent(text -> texts.put(name, text));
            return reader.read(name, bytes);
        }, threads).open(place, cancel, progress);
        texts.keySet().retainAll(place.inputs().stream().map(Input::name).toList()); // never the stock
        Report before = rules.check(opened.project(), settings, cancel, progress);
        Report report = before;
        List<Change> made = new ArrayList<>();
        Set<String> refused = new HashSet<>();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            Map<String, Text> changed = new Round(reader, texts, refused).make(report, made);
            if (changed.isEmpty()) {
                break;
            }
            texts.putAll(changed);
            opened = new Opened(place, again(opened.project(), changed));
            report = rules.check(opened.project(), settings, cancel, progress);
        }
        return new Fixed(before, opened, report, List.copyOf(made), left(report, texts), rewritten(texts));
    }

    private Project again(Project project, Map<String, Text> changed) {
        List<Source> sources = project.sources().stream().map(source -> changed.containsKey(source.file())
                ? reader.read(source.file(), changed.get(source.file()).encoded()) : source).toList();
        return Project.link(sources, stock);
    }

    private static List<Change> left(Report report, Map<String, Text> texts) {
        List<Change> left = new ArrayList<>();
        for (Finding finding : report.findings()) {
            if (finding.counts()) {
                finding.fixes().stream().filter(fix -> !fix.edits().isEmpty()).forEach(fix -> {
                    Text text = texts.get(fix.edits().getFirst().span().file());
                    left.add(Change.of(finding, fix, text == null ? "" : text.text()));
                });
            }
        }
        return left;
    }

    private static Map<String, Rewritten> rewritten(Map<String, Text> texts) {
        Map<String, Rewritten> rewritten = new TreeMap<>();
        texts.forEach((file, text) -> {
            if (text.isChanged()) {
                rewritten.put(file, new Rewritten(text.bytes(), text.encoded(), text.before(), text.text()));
            }
        });
        return rewritten;
    }
}
