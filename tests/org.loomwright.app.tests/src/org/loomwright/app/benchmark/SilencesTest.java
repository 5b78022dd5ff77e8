// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;
import org.loomwright.app.CheckProject;
import org.loomwright.app.Checked;
import org.loomwright.app.cache.ReportCache;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleBook;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Target;
import org.loomwright.rules.standard.StandardRules;

/** What was silent is not asked again in another run, as long as nothing that it rests on has changed. */
class SilencesTest {

    private static final int DRAWINGS = 10;
    private static final String WIRE = "to L1:1";

    private final SourceReader reader = LoomReader.create();
    private final AtomicLong asked = new AtomicLong();

    @TempDir
    private Path folder;

    /** Counts the calls of a rule. */
    private record Counted<T extends Target>(Rule<T> rule, AtomicLong asked) implements Rule<T> {

        @Override
        public RuleInfo info() {
            return rule.info();
        }

        @Override
        public Class<T> target() {
            return rule.target();
        }

        @Override
        public void check(T target, Findings findings) {
            asked.incrementAndGet();
            rule.check(target, findings);
        }
    }

    private RuleEngine counting() {
        List<Rule<?>> rules = new ArrayList<>();
        StandardRules.book().rules().forEach(rule -> rules.add(new Counted<>(rule, asked)));
        return new BookRuleEngine(new RuleBook(rules));
    }

    /** Returns the outcome of a check by a program that starts anew, and how many calls of rules it took. */
    private record Run(String outcome, long asked) {
    }

    private Run run(List<Input> inputs, boolean cached) throws BadCall {
        Optional<ReportCache> cache = cached
                ? Optional.of(new ReportCache(folder, "tool", ReportCache.USUAL_BOUND)) : Optional.empty();
        long before = asked.get();
        Checked checked = new CheckProject(() -> reader, threads -> counting(), cache).check(
                new ProjectPlace("large", Path.of(""), "", inputs), Settings.TIMELESS, 1, Cancel.NEVER, Progress.NONE);
        return new Run(checked.all().toString(), asked.get() - before);
    }

    /** The project with one wire of one drawing leading to another cavity. */
    private static List<Input> edited(List<Input> inputs) throws IOException {
        List<Input> edited = new ArrayList<>(inputs);
        int at = 1 + inputs.size() / 2;
        try (InputStream in = inputs.get(at).content().open()) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            assertTrue(text.contains(WIRE), "the test edits nothing");
            edited.set(at, Input.of(inputs.get(at).name(),
                    text.replaceFirst(WIRE, "to L1:9").getBytes(StandardCharsets.UTF_8)));
        }
        return edited;
    }

    @Test
    void oneEditedLineCostsWhatItTouches() throws BadCall, IOException {
        List<Input> inputs = new LargeProject(DRAWINGS, 60).inputs();
        Run full = run(edited(inputs), false);
        Run first = run(inputs, true);
        Run afterEdit = run(edited(inputs), true);
        assertEquals(full.outcome(), afterEdit.outcome());
        assertTrue(full.outcome().contains("unknown-cavity"), full.outcome());
        assertTrue(first.asked() >= full.asked() / 2, "the first run knows nothing");
        assertTrue(afterEdit.asked() < full.asked() / 4, afterEdit.asked() + " calls instead of " + full.asked());
    }

    /** A shape is looked at again where the drawing changed; none of those that are known to be sound is. */
    @Test
    void noShapeIsLookedAtThatIsKnownToBeSound() throws BadCall, IOException {
        List<Input> inputs = new LargeProject(DRAWINGS, 60).inputs();
        assertTrue(shapes(inputs) > DRAWINGS, "the first run looks at those of all drawings and of the harness");
        int again = shapes(edited(inputs));
        assertTrue(again >= 1 && again <= 2, again + " shapes where one drawing changed, which one harness covers");
    }

    private int shapes(List<Input> inputs) throws BadCall {
        AtomicLong looked = new AtomicLong();
        new CheckProject(() -> reader, threads -> counting(), Optional.of(new ReportCache(folder, "tool",
                ReportCache.USUAL_BOUND))).check(new ProjectPlace("large", Path.of(""), "", inputs), Settings.TIMELESS, 1,
                Cancel.NEVER, (what, done, total) -> looked.addAndGet(what.contains("shape of") ? 1 : 0));
        return looked.intValue();
    }

    /** A kept file that is damaged, or of another build, is as if there were none. */
    @Test
    void whatIsDamagedIsAskedAgain() throws BadCall, IOException {
        List<Input> inputs = new LargeProject(DRAWINGS, 60).inputs();
        Run full = run(edited(inputs), false);
        run(inputs, true);
        List<Path> kept;
        try (Stream<Path> files = Files.list(folder)) {
            kept = files.filter(each -> each.toString().endsWith(".silences")).toList();
        }
        assertEquals(1, kept.size());
        byte[] bytes = Files.readAllBytes(kept.getFirst());
        bytes[bytes.length / 2] ^= 1;
        Files.write(kept.getFirst(), bytes);
        assertEquals(full, run(edited(inputs), true));
    }
}
