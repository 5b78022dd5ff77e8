// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.channels.Channels;
import java.nio.channels.Pipe;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.ConfigurationParams;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.ProgressParams;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkDoneProgressCreateParams;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.loomwright.ide.Bench;
import org.loomwright.ide.session.Pace;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Settings;

/** A client of the protocol's library with a server over pipes; it remembers what it was told. */
final class Client implements LanguageClient, AutoCloseable {

    private static final int PIPE = 1 << 20;

    private final Map<String, List<Diagnostic>> diagnostics = new ConcurrentHashMap<>();
    private final List<String> messages = new CopyOnWriteArrayList<>();
    private final AtomicInteger refreshes = new AtomicInteger();
    private final List<String> progress = new CopyOnWriteArrayList<>();
    private final List<String> registered = new CopyOnWriteArrayList<>();
    private volatile JsonElement setting = JsonNull.INSTANCE;
    private final Path root;
    private final PipedOutputStream toServer;
    private final InputStream fromServer;
    private final LanguageServer server;
    private final CompletableFuture<Serving.End> end;
    private InitializeResult greeting;
    private int version;

    Client(Path root, BookRuleEngine engine) throws Exception {
        this.root = root;
        PipedInputStream fromClient = new PipedInputStream(PIPE);
        toServer = new PipedOutputStream(fromClient);
        // a pipe of the system: that of java.io breaks when a thread that wrote has ended
        Pipe down = Pipe.open();
        fromServer = Channels.newInputStream(down.source());
        OutputStream toClient = Channels.newOutputStream(down.sink());
        Serving serving = new Serving(() -> Bench.READER, () -> engine, Settings.TIMELESS,
                new Pace(Duration.ofMillis(20), Duration.ZERO), "test");
        end = CompletableFuture.supplyAsync(() -> serving.serve(fromClient, toClient));
        var launcher = LSPLauncher.createClientLauncher(this, fromServer, toServer);
        launcher.startListening();
        server = launcher.getRemoteProxy();
    }

    Client greet() throws Exception {
        return greet(new ClientCapabilities());
    }

    Client greet(ClientCapabilities capabilities) throws Exception {
        InitializeParams params = new InitializeParams();
        params.setCapabilities(capabilities);
        params.setWorkspaceFolders(List.of(new WorkspaceFolder(root.toUri().toString(), "test")));
        greeting = server.initialize(params).get(60, TimeUnit.SECONDS);
        server.initialized(new InitializedParams());
        return this;
    }

    InitializeResult greeting() {
        return greeting;
    }

    LanguageServer server() {
        return server;
    }

    String uri(String name) {
        return root.resolve(name).toUri().toString();
    }

    TextDocumentIdentifier id(String name) {
        return new TextDocumentIdentifier(uri(name));
    }

    void open(String name, String text) {
        server.getTextDocumentService().didOpen(new DidOpenTextDocumentParams(
                new TextDocumentItem(uri(name), "loom", ++version, text)));
    }

    /** Replaces a stretch. */
    void change(String name, Range range, String text) {
        server.getTextDocumentService().didChange(new DidChangeTextDocumentParams(
                new VersionedTextDocumentIdentifier(uri(name), ++version),
                new ArrayList<>(List.of(new TextDocumentContentChangeEvent(range, text)))));
    }

    /** The position of a piece of a text, plus some characters. */
    static Position at(String text, String piece, int plus) {
        int offset = text.indexOf(piece) + plus;
        String before = text.substring(0, offset);
        int line = (int) before.chars().filter(c -> c == '\n').count();
        return new Position(line, offset - before.lastIndexOf('\n') - 1);
    }

    List<Diagnostic> until(String name, Predicate<List<Diagnostic>> condition) throws InterruptedException {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(120);
        while (System.nanoTime() < deadline) {
            List<Diagnostic> now = diagnostics.get(uri(name));
            if (now != null && condition.test(now)) {
                return now;
            }
            Thread.sleep(10);
        }
        throw new AssertionError("diagnostics of " + name + " are " + diagnostics.get(uri(name)) + ", " + messages);
    }

    /** What was told of something long, a word each: {@code create}, {@code begin}, {@code report} or {@code end}. */
    List<String> progress() {
        return progress;
    }

    @Override
    public CompletableFuture<Void> createProgress(WorkDoneProgressCreateParams params) {
        progress.add("create");
        return CompletableFuture.completedFuture(null);
    }

    @Override
    public void notifyProgress(ProgressParams params) {
        progress.add(params.getValue().getLeft().getKind().name());
    }

    List<String> messages() {
        return messages;
    }

    Serving.End leave() throws Exception {
        server.shutdown().get(60, TimeUnit.SECONDS);
        server.exit();
        return end.get(60, TimeUnit.SECONDS);
    }

    Serving.End hangUp() throws Exception {
        toServer.close();
        return end.get(60, TimeUnit.SECONDS);
    }

    /** Is gone from one moment to the next: neither reads nor writes. */
    Serving.End vanish() throws Exception {
        fromServer.close();
        return hangUp();
    }

    @Override
    public void close() throws IOException {
        toServer.close();
    }

    @Override
    public void publishDiagnostics(PublishDiagnosticsParams params) {
        diagnostics.put(params.getUri(), params.getDiagnostics());
    }

    /** How often the server said that inlays should be asked for again. */
    int refreshes() {
        return refreshes.get();
    }

    @Override
    public CompletableFuture<Void> refreshInlayHints() {
        refreshes.incrementAndGet();
        return CompletableFuture.completedFuture(null);
    }

    /** What its settings say from now on, in the section of the server. */
    void setting(JsonElement section) {
        setting = section;
    }

    @Override
    public CompletableFuture<List<Object>> configuration(ConfigurationParams params) {
        return CompletableFuture.completedFuture(params.getItems().stream().<Object>map(each ->
                each.getSection().equals("loomwright") ? setting : JsonNull.INSTANCE).toList());
    }

    @Override
    public CompletableFuture<Void> registerCapability(RegistrationParams params) {
        params.getRegistrations().forEach(each -> registered.add(each.getMethod()));
        return CompletableFuture.completedFuture(null);
    }

    /** What the server wants to be told of. */
    List<String> registered() {
        return registered;
    }

    /** Waits until it was told something. */
    void untilTold(BooleanSupplier told) throws InterruptedException {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
        while (!told.getAsBoolean()) {
            if (System.nanoTime() > deadline) {
                throw new AssertionError("not told within a minute; " + messages);
            }
            Thread.sleep(10);
        }
    }

    @Override
    public void telemetryEvent(Object object) {
        throw new AssertionError("nothing is sent to anybody");
    }

    @Override
    public void showMessage(MessageParams params) {
        messages.add(params.getMessage());
    }

    @Override
    public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams params) {
        return CompletableFuture.completedFuture(null);
    }

    @Override
    public void logMessage(MessageParams params) {
        messages.add(params.getMessage());
    }
}
