// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.revision;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
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
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** A revision that is read ahead is read once, and what is wrong with it is told when it is asked for. */
class SinceRevisionTest {

    private static final SourceReader READER = LoomReader.create();
    private static final String PLATFORM = "platform orrin {\n    years 1964 .. 1971\n}\n";
    private static final String WAIVER = "waive old: orphan-wire on orrin because \"a test\"\n";

    private final AtomicInteger found = new AtomicInteger();
    private final AtomicInteger parsed = new AtomicInteger();

    @TempDir
    private Path temporary;

    private CheckProject check(boolean cached) {
        SourceReader counting = (file, bytes) -> {
            parsed.incrementAndGet();
            return READER.read(file, bytes);
        };
        return new CheckProject(() -> counting, StandardRules::engine, cached
                ? Optional.of(new ReportCache(temporary.resolve("cache"), "tool", ReportCache.USUAL_BOUND))
                : Optional.empty());
    }

    private ProjectPlace place(String text) {
        return new ProjectPlace("cars", temporary.resolve("cars"), "cars/",
                List.of(Input.of("all.loom", text.getBytes(StandardCharsets.UTF_8))));
    }

    private SinceRevision since(CheckProject check) {
        return new SinceRevision(check, (base, revision, path, fromTop) -> {
            found.incrementAndGet();
            return Optional.of(place(PLATFORM + WAIVER));
        }, "v1");
    }

    private SinceRevision.Since outcome(boolean cached, boolean ahead) throws BadCall {
        CheckProject check = check(cached);
        SinceRevision since = since(check);
        ProjectPlace now = place(PLATFORM + WAIVER + WAIVER.replace("old", "fresh"));
        if (ahead) {
            since.begin(temporary, List.of(now), Settings.TIMELESS);
        }
        List<Checked> checked = new ArrayList<>(List.of(check.check(now, Settings.TIMELESS, 1, Cancel.NEVER,
                Progress.NONE)));
        return since.apply(temporary, checked, Settings.TIMELESS, Cancel.NEVER, Progress.NONE);
    }

    @Test
    void aheadOrNotTheOutcomeIsTheSameAndTheRevisionIsReadOnce() throws BadCall {
        SinceRevision.Since plain = outcome(false, false);
        assertEquals(new SinceRevision.Since("v1", 1, 1, 0, List.of()), plain);
        for (boolean cached : new boolean[] {false, true, true}) {
            found.set(0);
            assertEquals(plain, outcome(cached, true));
            assertEquals(1, found.get());
        }
    }

    @Test
    void whatIsKeptOfTheRevisionIsNotReadAgain() throws BadCall {
        outcome(true, true);
        parsed.set(0);
        assertEquals(1, outcome(true, true).fresh());
        assertEquals(0, parsed.get());
    }

    @Test
    void whatIsWrongIsToldWhenItIsAskedFor() throws BadCall {
        CheckProject check = check(false);
        SinceRevision since = new SinceRevision(check, (base, revision, path, fromTop) -> {
            throw new BadCall("no revision is called 'v7'");
        }, "v7");
        ProjectPlace now = place(PLATFORM);
        since.begin(temporary, List.of(now), Settings.TIMELESS);
        List<Checked> checked = new ArrayList<>(List.of(check.check(now, Settings.TIMELESS, 1, Cancel.NEVER,
                Progress.NONE)));
        assertEquals("no revision is called 'v7'", assertThrows(BadCall.class, () -> since.apply(temporary, checked,
                Settings.TIMELESS, Cancel.NEVER, Progress.NONE)).getMessage());
    }
}
