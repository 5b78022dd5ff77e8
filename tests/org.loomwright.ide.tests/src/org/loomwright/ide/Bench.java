// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.loomwright.app.EditSession;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectFiles;
import org.loomwright.harness.TextEdit;
import org.loomwright.ide.complete.Proposal;
import org.loomwright.ide.project.Moment;
import org.loomwright.ide.project.StockParts;
import org.loomwright.lang.LoomReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** A project in memory and questions about it; {@code |} in a text is the cursor. */
public final class Bench {

    /** The language, set up once. */
    public static final LoomReader READER = LoomReader.create();
    private static final StockParts STOCK = new StockParts(READER);
    /** The repository. */
    public static final Path ROOT = Path.of(System.getProperty("loomwright.root")).normalize().toAbsolutePath();
    /** The example that everything is shown on. */
    public static final Path ORRIN = ROOT.resolve("docs/examples/orrin");

    private final Map<String, String> texts = new TreeMap<>();
    private Settings settings = Settings.TIMELESS;
    private Moment moment;

    private Bench() {
    }

    /** The Orrin. */
    public static Bench orrin() {
        return folder(ORRIN);
    }

    /** A folder of sources. */
    public static Bench folder(Path folder) {
        Bench bench = new Bench();
        for (Input input : ProjectFiles.below(folder)) {
            try {
                bench.texts.put(input.name(), Files.readString(folder.resolve(input.name())));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return bench;
    }

    /** No file yet. */
    public static Bench empty() {
        return new Bench();
    }

    /** One file. */
    public static Bench of(String file, String text) {
        return new Bench().with(file, text);
    }

    /** The same with another text of a file. */
    public Bench with(String file, String text) {
        texts.put(file, text);
        moment = null;
        return this;
    }

    /** The same texts, to be changed without changing this one. */
    public Bench copy() {
        Bench copy = new Bench();
        copy.texts.putAll(texts);
        copy.settings = settings;
        return copy;
    }

    /** The same on a day, so that what has a last day can be over. */
    public Bench on(LocalDate day) {
        settings = Settings.on(day);
        moment = null;
        return this;
    }

    /** The names of its files, in order. */
    public List<String> files() {
        return List.copyOf(texts.keySet());
    }

    /** The text of a file. */
    public String text(String file) {
        return texts.get(file);
    }

    /** The project with what is wrong with its texts and names; no rule is asked. */
    public Moment moment() {
        return moment == null ? moment = moment(false) : moment;
    }

    /** The project as all rules see it. */
    public Moment checked() {
        return moment == null || !moment.settled() ? moment = moment(true) : moment;
    }

    private Moment moment(boolean whole) {
        EditSession session = new EditSession(READER, 1, StandardRules.engine(1), settings);
        List<Input> inputs = new ArrayList<>();
        texts.forEach((name, text) -> inputs.add(Input.of(name, text.getBytes(StandardCharsets.UTF_8))));
        List<Finding> findings = session.read(inputs, List.of(), Cancel.NEVER, Progress.NONE);
        if (whole) {
            findings = session.check(Cancel.NEVER, Progress.NONE).findings();
        }
        return Moment.first(session.project(), findings, whole, READER.words(), STOCK);
    }

    /** Writes something on a line of its own behind a piece of a file, and asks what can follow. */
    public List<Proposal> completions(String file, String after, String typed) {
        String text = texts.get(file);
        int at = text.indexOf(after);
        if (at < 0) {
            throw new IllegalArgumentException("no " + after + " in " + file);
        }
        at += after.length();
        Bench other = new Bench();
        other.texts.putAll(texts);
        other.with(file, text.substring(0, at) + typed + "\n" + text.substring(at));
        return Services.complete(other.moment(), file, at + typed.length(), Cancel.NEVER);
    }

    /** The texts of proposals, in order. */
    public static List<String> texts(List<Proposal> proposals) {
        return proposals.stream().map(Proposal::text).toList();
    }

    /** The offset of a piece of a file, plus some characters. */
    public int offset(String file, String piece, int plus) {
        int at = texts.get(file).indexOf(piece);
        if (at < 0) {
            throw new IllegalArgumentException("no " + piece + " in " + file);
        }
        return at + plus;
    }

    /** The file after some edits. */
    public String edited(String file, List<TextEdit> edits) {
        return TextEdit.apply(texts.get(file), edits.stream().filter(edit -> edit.span().file().equals(file))
                .sorted(Comparator.comparing(TextEdit::span)).toList());
    }
}
