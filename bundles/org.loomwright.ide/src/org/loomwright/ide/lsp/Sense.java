// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletionException;
import java.util.regex.Pattern;
import org.eclipse.lsp4j.jsonrpc.MessageConsumer;
import org.eclipse.lsp4j.jsonrpc.MessageIssueException;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.Message;
import org.eclipse.lsp4j.jsonrpc.messages.MessageIssue;
import org.eclipse.lsp4j.jsonrpc.messages.NotificationMessage;
import org.eclipse.lsp4j.jsonrpc.messages.RequestMessage;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.jsonrpc.services.ServiceEndpoints;
import org.eclipse.lsp4j.jsonrpc.validation.ReflectiveMessageValidator;
import org.eclipse.lsp4j.services.LanguageServer;

/**
 * Refuses questions that lack what they are about, before they are asked, and puts what fails into one line. What the
 * server says itself, which may be long, is not looked at.
 */
final class Sense {

    private static final Set<String> KNOWN = ServiceEndpoints.getSupportedMethods(LanguageServer.class).keySet();
    /** What no question makes sense without; what else a client may leave out, the server does without. */
    private static final Pattern MISSED = Pattern.compile(
            "\\.get(TextDocument|Uri|Position|Range|Query|NewName)\\(\\)");

    private Sense() {
    }

    /** A consumer that gets what makes sense only. */
    static MessageConsumer of(MessageConsumer next) {
        MessageConsumer strict = new ReflectiveMessageValidator(checked -> { });
        return message -> {
            if (isTold(message)) {
                complaint(message, strict).ifPresent(why -> {
                    throw new MessageIssueException(message, new MessageIssue(why,
                            ResponseErrorCode.InvalidParams.getValue()));
                });
            }
            next.consume(message);
        };
    }

    private static Optional<String> complaint(Message message, MessageConsumer strict) {
        if (message instanceof RequestMessage request && request.getParams() == null
                && !request.getMethod().equals("shutdown") && KNOWN.contains(request.getMethod())) {
            return Optional.of("the question " + request.getMethod() + " has no parameters");
        }
        try {
            strict.consume(message);
            return Optional.empty();
        } catch (MessageIssueException issues) {
            return issues.getIssues().stream().map(MessageIssue::getText).filter(text -> MISSED.matcher(text).find())
                    .map(text -> text.lines().findFirst().orElse("")).findFirst();
        }
    }

    /** Whether a client told it, or may have: a question, or a note that is none of the long ones of the server. */
    private static boolean isTold(Message message) {
        return message instanceof RequestMessage || message instanceof NotificationMessage note
                        && !note.getMethod().equals("textDocument/publishDiagnostics");
    }

    /** What failed, as an error of the protocol. */
    static ResponseError error(Throwable failed) {
        Throwable cause = failed;
        while ((cause instanceof CompletionException || cause instanceof java.lang.reflect.InvocationTargetException)
                && cause.getCause() != null) {
            cause = cause.getCause();
        }
        return switch (cause) {
            case ResponseErrorException known -> known.getResponseError();
            case UnsupportedOperationException none -> new ResponseError(ResponseErrorCode.MethodNotFound,
                    "the server does not do this", null);
            default -> fault(cause);
        };
    }

    static ResponseError fault(Throwable cause) {
        return new ResponseError(ResponseErrorCode.InternalError, "a fault of Loomwright ("
                + cause.getClass().getSimpleName() + ")", null);
    }
}
