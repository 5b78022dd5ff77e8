// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.ide.project.Moment;
import org.loomwright.ide.session.Listener;
import org.loomwright.ide.session.Pace;
import org.loomwright.ide.session.Workspace;
import org.loomwright.quantity.Cancelled;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** Projects while somebody types: unsaved texts, files that change outside, findings that come and go. */
class WorkspaceTest {

    private static final String PLATFORM = "platform p {\n    years 1964 .. 1965\n    place box\n}\n";
    private static final String DRAWING = "drawing d of p {\n    datum box\n}\n";

    @TempDir
    Path folder;

    private final Map<String, List<Finding>> heard = new ConcurrentHashMap<>();
    private final Map<String, OptionalInt> versions = new ConcurrentHashMap<>();
    private Workspace workspace;

    @BeforeEach
    void open() throws IOException {
        folder = folder.toRealPath();
        Files.writeString(folder.resolve("p.loom"), PLATFORM);
        Files.writeString(folder.resolve("d.loom"), DRAWING);
        workspace = workspace(Duration.ofHours(1));
    }

    private Workspace workspace(Duration pause) {
        Listener listener = (file, version, moment, findings) -> {
            heard.put(file.getFileName().toString(), findings);
            versions.put(file.getFileName().toString(), version);
        };
        return new Workspace(Bench.READER, StandardRules.engine(1), Settings.TIMELESS,
                new Pace(pause, Duration.ZERO), listener);
    }

    @AfterEach
    void close() {
        workspace.close();
    }

    private void type(String name, int version, String text) throws Exception {
        workspace.changed(folder.resolve(name), version, text);
        // an answer comes after all that was told before
        workspace.ask(folder.resolve(name), (moment, file, cancel) -> moment.number()).get(30, TimeUnit.SECONDS);
    }

    private List<String> rules(String name) {
        return heard.getOrDefault(name, List.of()).stream().map(Finding::rule).toList();
    }

    @Test
    void whatIsWrongWithNamesIsToldAtOnceAndRulesLater() throws Exception {
        type("d.loom", 1, DRAWING.replace("datum box", "datum bx"));
        assertEquals(List.of("name-unknown"), rules("d.loom"));
        assertEquals(OptionalInt.of(1), versions.get("d.loom"));
        type("d.loom", 2, DRAWING);
        assertEquals(List.of(), rules("d.loom"));
    }

    @Test
    void anUnsavedTextHidesTheFileAndGoesWhenItsEditorIsClosed() throws Exception {
        type("p.loom", 1, PLATFORM.replace("place box", "place bix"));
        assertEquals(List.of("name-unknown"), rules("d.loom"), "the other file feels it");
        workspace.closed(folder.resolve("p.loom"));
        workspace.ask(folder.resolve("d.loom"), (moment, file, cancel) -> 0).get(30, TimeUnit.SECONDS);
        assertEquals(List.of(), rules("d.loom"));
    }

    @Test
    void filesThatChangeOutsideAreRead() throws Exception {
        type("d.loom", 1, DRAWING);
        Files.writeString(folder.resolve("p.loom"), PLATFORM.replace("place box", "place another"));
        workspace.refresh();
        workspace.ask(folder.resolve("d.loom"), (moment, file, cancel) -> 0).get(30, TimeUnit.SECONDS);
        assertEquals(List.of("name-unknown"), rules("d.loom"));
        Files.delete(folder.resolve("p.loom"));
        workspace.refresh();
        workspace.ask(folder.resolve("d.loom"), (moment, file, cancel) -> 0).get(30, TimeUnit.SECONDS);
        assertTrue(heard.get("d.loom").getFirst().sentence().contains("p"), "the platform is gone");
        Files.delete(folder.resolve("d.loom"));
        workspace.refresh();
        String text = workspace.ask(folder.resolve("d.loom"), (moment, file, cancel) -> moment.text(file))
                .get(30, TimeUnit.SECONDS);
        assertEquals(DRAWING, text, "what an editor has open stays when its file is deleted");
    }

    @Test
    void afterEverythingIsSettledTheFindingsAreThoseOfACheck() throws Exception {
        Path orrin = Bench.ORRIN;
        workspace.project(orrin);
        String name = "front-1964.loom";
        String text = Files.readString(orrin.resolve(name)).replace("wire b 18 ga from S20 to C1:1",
                "wire b 18 ga from S20 to C1:3");
        workspace.changed(orrin.resolve(name), 1, text);
        workspace.settled().get(120, TimeUnit.SECONDS);
        List<Finding> expected = Bench.orrin().with(name, text).checked().findings(name).stream()
                .filter(Finding::counts).map(Finding::inWords).toList();
        assertFalse(expected.isEmpty());
        assertEquals(expected, heard.get(name).stream().map(Finding::inWords).toList());
    }

    @Test
    void aQuestionIsCancelledByAChange() throws Exception {
        type("d.loom", 1, DRAWING);
        var started = new CountDownLatch(1);
        var answer = workspace.ask(folder.resolve("d.loom"), (moment, file, cancel) -> {
            started.countDown();
            while (true) {
                cancel.check();
                Thread.onSpinWait();
            }
        });
        assertTrue(started.await(30, TimeUnit.SECONDS));
        workspace.changed(folder.resolve("d.loom"), 2, DRAWING + "\n");
        ExecutionException failed = assertThrows(ExecutionException.class,
                () -> answer.get(30, TimeUnit.SECONDS));
        assertTrue(failed.getCause() instanceof Cancelled);
    }

    @Test
    void openingAFileAsItIsOnDiskReadsNothingAgainAndWaitsForNobody() throws Exception {
        workspace.opened(folder.resolve("d.loom"), 7, DRAWING);
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
        while (!ask("d.loom", Moment::settled) && System.nanoTime() < deadline) {
            Thread.sleep(5);
        }
        assertTrue(ask("d.loom", Moment::settled), "all rules were asked, though the pause is an hour");
        assertEquals(OptionalInt.of(7), versions.get("d.loom"));
        long before = ask("d.loom", Moment::number);
        workspace.opened(folder.resolve("p.loom"), 1, PLATFORM);
        assertEquals(before, ask("d.loom", Moment::number), "nothing has changed");
        assertEquals(OptionalInt.of(1), versions.get("p.loom"));
        workspace.opened(folder.resolve("p.loom"), 2, PLATFORM.replace("place box", "place bix"));
        assertTrue(ask("d.loom", Moment::number) > before);
        assertEquals(List.of("name-unknown"), rules("d.loom"), "another text than that on disk is read");
    }

    private <T> T ask(String name, Function<Moment, T> question) throws Exception {
        return workspace.ask(folder.resolve(name), (moment, file, cancel) -> question.apply(moment))
                .get(30, TimeUnit.SECONDS);
    }
}
