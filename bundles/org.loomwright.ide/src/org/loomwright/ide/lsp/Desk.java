// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.loomwright.ide.session.Question;
import org.loomwright.ide.session.Workspace;
import org.loomwright.quantity.Cancelled;

/** Asks the workspace, and turns what can go wrong into answers of the protocol. */
final class Desk implements AutoCloseable {

    private volatile Workspace workspace;
    private volatile boolean closed;

    void open(Workspace opened) {
        workspace = opened;
    }

    Optional<Workspace> workspace() {
        return Optional.ofNullable(workspace);
    }

    /** Why nothing can be asked, before the client has greeted and after it took leave. */
    private <T> CompletableFuture<T> refusal() {
        return CompletableFuture.failedFuture(new ResponseErrorException(closed
                ? new ResponseError(ResponseErrorCode.InvalidRequest, "the server was shut down", null)
                : new ResponseError(ResponseErrorCode.ServerNotInitialized, "initialize comes first", null)));
    }

    /** An answer about a file; {@code none} for one that is no file. */
    <T> CompletableFuture<T> ask(Optional<Path> file, T none, Question<T> question) {
        Workspace asked = workspace;
        if (asked == null) {
            return refusal();
        }
        return file.isEmpty() ? CompletableFuture.completedFuture(none) : answer(asked.ask(file.get(), question));
    }

    /** Answers of all projects, in one list. */
    <T> CompletableFuture<List<T>> askAll(Question<List<T>> question) {
        Workspace asked = workspace;
        if (asked == null) {
            return refusal();
        }
        return answer(asked.askAll(question).thenApply(answers -> answers.stream().flatMap(List::stream).toList()));
    }

    private static <T> CompletableFuture<T> answer(CompletableFuture<T> asked) {
        CompletableFuture<T> answer = asked.exceptionally(failed -> {
            throw new ResponseErrorException(error(failed));
        });
        answer.whenComplete((done, failed) -> {
            if (answer.isCancelled()) {
                asked.cancel(true);
            }
        });
        return answer;
    }

    private static ResponseError error(Throwable failed) {
        Throwable cause = failed instanceof CompletionException ? failed.getCause() : failed;
        return switch (cause) {
            case ResponseErrorException known -> known.getResponseError();
            case CancellationException gone -> new ResponseError(ResponseErrorCode.RequestCancelled, "cancelled", null);
            case Cancelled changed -> new ResponseError(ResponseErrorCode.ContentModified,
                    "the text changed meanwhile", null);
            default -> Sense.fault(cause);
        };
    }

    @Override
    public void close() {
        Workspace last = workspace;
        closed = true;
        workspace = null;
        if (last != null) {
            last.close();
        }
    }
}
