// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.jsonrpc.services.JsonRequest;
import org.eclipse.lsp4j.services.LanguageClient;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.ide.Bench;
import org.loomwright.ide.session.Pace;
import org.loomwright.ide.session.Workspace;
import org.loomwright.quantity.Cancelled;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleBook;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;
import org.loomwright.rules.standard.StandardRules;

/** Clients that change their mind, type while a check runs, vanish, or find their files changed by others. */
class HardClientsTest {

    private static final String FILE = "a.loom";
    private static final String TEXT = """
            platform p {
                years 1964 .. 1965
                place box
            }
            catalogue c {
                housing two {
                    cavities 1 .. 2
                }
            }
            drawing d of p {
                datum box
                connector A at box is two
                connector B at box is two
                connector C at box is two
            }
            """;

    @TempDir
    private Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.toRealPath().resolve(FILE), text);
    }

    /** Looks at housings; the first look lasts until the check is cancelled. */
    private static final class Patient implements Rule<Target.OfHousing> {

        private final CountDownLatch started = new CountDownLatch(1);
        private final CountDownLatch again = new CountDownLatch(3);
        private final AtomicInteger looks = new AtomicInteger();
        private final AtomicInteger cancelled = new AtomicInteger();

        @Override
        public RuleInfo info() {
            return new RuleInfo("patient", "Does it give way?", Severity.ERROR, RuleInfo.Kind.ENGINEERING,
                    RuleInfo.Scope.HOUSING, "common practice");
        }

        @Override
        public Class<Target.OfHousing> target() {
            return Target.OfHousing.class;
        }

        @Override
        public void check(Target.OfHousing target, Findings findings) {
            if (looks.incrementAndGet() > 1) {
                again.countDown();
                return;
            }
            started.countDown();
            long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
            try {
                while (System.nanoTime() < deadline) {
                    findings.checkCancelled();
                    Thread.onSpinWait();
                }
            } catch (Cancelled gaveWay) {
                cancelled.incrementAndGet();
                throw gaveWay;
            }
        }
    }

    @Test
    void aKeystrokeEndsTheCheckInProgressAndTheNextOneIsWhole() throws Exception {
        file(TEXT);
        Patient rule = new Patient();
        try (Client client = new Client(folder.toRealPath(), new BookRuleEngine(new RuleBook(List.of(rule)))).greet()) {
            client.open(FILE, TEXT);
            assertTrue(rule.started.await(60, TimeUnit.SECONDS));
            client.change(FILE, new Range(new Position(0, 0), new Position(0, 0)), "// typed\n");
            assertEquals(3, client.server().getTextDocumentService().documentSymbol(new DocumentSymbolParams(
                    client.id(FILE))).get(60, TimeUnit.SECONDS).size(), "answered while it would go on");
            assertTrue(rule.again.await(60, TimeUnit.SECONDS), "all three housings are looked at");
            assertEquals(1, rule.cancelled.get());
            assertEquals(4, rule.looks.get(), "the cancelled check looked at one housing");
            assertEquals(List.of(), client.messages(), "giving way is no fault");
        }
    }

    /** A question that lasts until nobody wants its answer. */
    interface Asking {

        /** Answers never. */
        @JsonRequest
        CompletableFuture<String> forEver();
    }

    @Test
    void aRequestThatIsCancelledStopsWorking() throws Exception {
        Path file = file(TEXT);
        CountDownLatch started = new CountDownLatch(1);
        CountDownLatch stopped = new CountDownLatch(1);
        AtomicInteger rounds = new AtomicInteger();
        PipedInputStream fromClient = new PipedInputStream();
        OutputStream toServer = new PipedOutputStream(fromClient);
        PipedInputStream fromServer = new PipedInputStream();
        OutputStream toClient = new PipedOutputStream(fromServer);
        try (Desk desk = new Desk(); Workspace workspace = new Workspace(Bench.READER, StandardRules.engine(1),
                Settings.TIMELESS, new Pace(Duration.ofHours(1), Duration.ZERO), (path, version, moment, told) -> { })) {
            desk.open(workspace);
            workspace.opened(file, 1, TEXT);
            Asking service = () -> desk.ask(Optional.of(file), "none", (moment, name, cancel) -> {
                started.countDown();
                try {
                    while (true) {
                        cancel.check();
                        rounds.incrementAndGet();
                    }
                } finally {
                    stopped.countDown();
                }
            });
            Launcher.createLauncher(service, LanguageClient.class, fromClient, toClient).startListening();
            Launcher<Asking> client = Launcher.createLauncher(new Object(), Asking.class, fromServer, toServer);
            client.startListening();
            CompletableFuture<String> asked = client.getRemoteProxy().forEver();
            assertTrue(started.await(60, TimeUnit.SECONDS));
            assertFalse(stopped.await(20, TimeUnit.MILLISECONDS));
            asked.cancel(true); // sends $/cancelRequest; an answer that says so may be there before this returns
            assertTrue(stopped.await(60, TimeUnit.SECONDS));
            int done = rounds.get();
            Thread.sleep(20);
            assertEquals(done, rounds.get(), "nothing works on");
            assertTrue(asked.isCompletedExceptionally());
            toServer.close();
        }
    }

    /** What the library and we say to whoever reads the standard error stream. */
    private static final class Heard extends Handler implements AutoCloseable {

        private final List<String> said = new CopyOnWriteArrayList<>();
        private final Logger root = Logger.getLogger("");

        Heard() {
            root.addHandler(this);
        }

        @Override
        public void publish(LogRecord told) {
            said.add(told.getLoggerName() + ": " + told.getMessage());
        }

        @Override
        public void flush() {
            // nothing is kept back
        }

        @Override
        public void close() {
            root.removeHandler(this);
        }
    }

    @Test
    void aClientThatVanishesInTheMiddleOfAnythingIsToldInOneLine() throws Exception {
        file(TEXT);
        for (int moment = 0; moment < 12; moment++) {
            try (Heard heard = new Heard();
                    Client client = new Client(folder.toRealPath(), StandardRules.engine(1)).greet()) {
                client.open(FILE, TEXT.replace("datum box", "datum bix"));
                for (int i = 0; i < moment; i++) {
                    client.change(FILE, new Range(new Position(0, 0), new Position(0, 0)), "// typed\n");
                    client.server().getTextDocumentService().documentSymbol(new DocumentSymbolParams(
                            client.id(FILE)));
                }
                Serving.End end = client.vanish();
                assertFalse(end.orderly());
                assertEquals(1, end.complaint().orElseThrow().lines().count());
                Thread.sleep(5);
                assertEquals(List.of(), heard.said);
            }
        }
    }

    @Test
    void aConnectionThatBreaksIsToldInOneLine() {
        InputStream broken = new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("the cable was cut");
            }
        };
        String hello = "{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\",\"params\":{\"capabilities\":{}}}";
        InputStream in = new SequenceInputStream(new ByteArrayInputStream(("Content-Length: " + hello.length()
                + "\r\n\r\n" + hello).getBytes(StandardCharsets.US_ASCII)), broken);
        try (Heard heard = new Heard()) {
            Serving.End end = new Serving(() -> Bench.READER, () -> StandardRules.engine(1), Settings.TIMELESS,
                    new Pace(Duration.ZERO, Duration.ZERO), "test").serve(in, OutputStream.nullOutputStream());
            assertFalse(end.orderly());
            assertTrue(end.complaint().orElseThrow().contains("the cable was cut"), end::toString);
            assertEquals(List.of(), heard.said);
        }
    }
}
