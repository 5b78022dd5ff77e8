// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.io.InputStream;
import java.io.OutputStream;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.loomwright.ide.session.Pace;
import org.loomwright.lang.LoomReader;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Settings;

/** Serves one client over two streams until it says goodbye, closes its end or sends nonsense. */
public final class Serving {

    /**
     * What the library has to say would go to the standard error stream, where a client that hung up is no news. Held
     * here, since a logger that nobody holds forgets its level; off for good, since threads that are stopped talk last.
     */
    private static final Logger LIBRARY = Logger.getLogger("org.eclipse.lsp4j");

    private final Supplier<LoomReader> reader;
    private final Supplier<BookRuleEngine> engine;
    private final Settings settings;
    private final Pace pace;
    private final String version;

    /**
     * @param reader   reads sources
     * @param engine   checks
     * @param settings what a check depends on besides the texts
     * @param pace     how patient the server is
     * @param version  of the program, which clients are told
     */
    public Serving(Supplier<LoomReader> reader, Supplier<BookRuleEngine> engine, Settings settings, Pace pace,
            String version) {
        this.reader = reader;
        this.engine = engine;
        this.settings = settings;
        this.pace = pace;
        this.version = version;
    }

    /**
     * How it ended.
     *
     * @param orderly   whether the client asked for the end before it came
     * @param complaint one line on what went wrong; empty when nothing did
     */
    public record End(boolean orderly, Optional<String> complaint) {
    }

    /** Serves; returns when it is over. Nothing else must be written to the output meanwhile. */
    public End serve(InputStream in, OutputStream out) {
        LIBRARY.setLevel(Level.OFF);
        GuardedInput input = new GuardedInput(in);
        CompletableFuture<Void> exit = new CompletableFuture<>();
        ExecutorService threads = Executors.newCachedThreadPool(task -> {
            Thread thread = new Thread(task, "loom-lsp");
            thread.setDaemon(true);
            return thread;
        });
        try (LoomServer server = new LoomServer(reader, engine, settings, pace, version, exit)) {
            Launcher<LanguageClient> launcher = new Launcher.Builder<LanguageClient>().setLocalService(server)
                    .setRemoteInterface(LanguageClient.class).setInput(input).setOutput(out)
                    .setExecutorService(threads).wrapMessages(Sense::of).setExceptionHandler(Sense::error).create();
            server.connect(launcher.getRemoteProxy());
            Future<Void> listening = launcher.startListening();
            CompletableFuture<Optional<String>> closed = CompletableFuture.supplyAsync(() -> await(listening),
                    threads);
            CompletableFuture.anyOf(exit, closed).join();
            if (exit.isDone() || server.isShutDown()) {
                return new End(server.isShutDown(), server.isShutDown() ? Optional.empty()
                        : Optional.of("the client left without shutting down"));
            }
            return new End(false, Optional.of(input.complaint().or(closed::join)
                    .orElse("the client closed its end without shutting down")));
        } finally {
            threads.shutdownNow();
        }
    }

    /** Returns when nothing more can be read: why, where it is not just the end. */
    private static Optional<String> await(Future<Void> listening) {
        try {
            listening.get();
            return Optional.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        } catch (ExecutionException e) {
            Throwable cause = e.getCause();
            while (cause.getCause() != null) {
                cause = cause.getCause();
            }
            return Optional.of("the connection to the client broke" + (cause.getMessage() == null ? ""
                    : " (" + cause.getMessage().lines().findFirst().orElse("") + ")"));
        }
    }
}
