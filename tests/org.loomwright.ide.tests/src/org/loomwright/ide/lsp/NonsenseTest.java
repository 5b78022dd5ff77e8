// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.loomwright.ide.Bench;
import org.loomwright.ide.session.Pace;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/**
 * Messages that are JSON and no sensible question. Each gets an error with the code that the protocol has for it
 * (Language Server Protocol 3.17, "Error Codes") in one line, and the server goes on.
 */
class NonsenseTest {

    private static final Pattern MESSAGE = Pattern.compile("Content-Length: (\\d+)\r\n\r\n");
    private static final String GREETING = "\"method\":\"initialize\",\"params\":{\"capabilities\":{}}";
    private static final String SYMBOL = "\"method\":\"workspace/symbol\",\"params\":{\"query\":\"x\"}";
    /** Marks what has no answer. */
    private static final String NOTE = "note:";
    private static final int INVALID_REQUEST = -32600;
    private static final int UNKNOWN_METHOD = -32601;
    private static final int INVALID_PARAMS = -32602;
    private static final int NOT_INITIALIZED = -32002;

    /** The answers to some questions, by number from 1; after all of them the client leaves as it should. */
    private static Map<Integer, JsonObject> answers(String... questions) {
        StringBuilder sent = new StringBuilder();
        List<String> all = new ArrayList<>();
        for (int i = 0; i < questions.length; i++) {
            String id = questions[i].startsWith(NOTE) ? "" : "\"id\":" + (i + 1) + ",";
            all.add("{\"jsonrpc\":\"2.0\"," + id + questions[i].replace(NOTE, "") + "}");
        }
        all.add("{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}");
        all.forEach(each -> sent.append("Content-Length: ").append(each.getBytes(StandardCharsets.UTF_8).length)
                .append("\r\n\r\n").append(each));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new Serving(() -> Bench.READER, () -> StandardRules.engine(1), Settings.TIMELESS,
                new Pace(Duration.ofHours(1), Duration.ZERO), "test").serve(new ByteArrayInputStream(
                        sent.toString().getBytes(StandardCharsets.UTF_8)), out);
        String said = out.toString(StandardCharsets.UTF_8);
        assertFalse(said.contains("\\tat "), () -> "a stack trace: " + said);
        Map<Integer, JsonObject> answers = new TreeMap<>();
        Matcher message = MESSAGE.matcher(said);
        for (int at = 0; message.find(at); at = message.end() + Integer.parseInt(message.group(1))) {
            JsonObject answer = JsonParser.parseString(said.substring(message.end(), message.end()
                    + Integer.parseInt(message.group(1)))).getAsJsonObject();
            if (answer.has("id") && !answer.has("method")) {
                answers.put(answer.get("id").getAsInt(), answer);
            }
        }
        return answers;
    }

    private static void refused(JsonObject answer, int code) {
        assertTrue(answer != null && answer.has("error"), () -> "no error: " + answer);
        JsonObject error = answer.getAsJsonObject("error");
        assertEquals(code, error.get("code").getAsInt(), error::toString);
        String message = error.get("message").getAsString();
        assertFalse(message.isBlank() || message.contains("\n") || message.contains("Exception"), message);
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "\"method\":\"textDocument/hover\"",
        "\"method\":\"textDocument/hover\",\"params\":{}",
        "\"method\":\"textDocument/hover\",\"params\":{\"textDocument\":null}",
        "\"method\":\"textDocument/hover\",\"params\":{\"textDocument\":{\"uri\":\"file:///a.loom\"}}",
        "\"method\":\"textDocument/completion\",\"params\":{\"textDocument\":{\"uri\":null}}",
        "\"method\":\"textDocument/documentSymbol\"",
        "\"method\":\"textDocument/documentSymbol\",\"params\":{\"textDocument\":{}}",
        "\"method\":\"textDocument/inlayHint\",\"params\":{\"textDocument\":{\"uri\":\"file:///a.loom\"}}",
        "\"method\":\"workspace/symbol\",\"params\":{}",
        "\"method\":\"workspace/symbol\"",
        "\"method\":\"initialize\""})
    void aQuestionWithoutWhatItIsAboutIsRefused(String question) {
        Map<Integer, JsonObject> answers = question.contains("initialize") ? answers(question, GREETING)
                : answers(GREETING, question);
        refused(answers.get(question.contains("initialize") ? 1 : 2), INVALID_PARAMS);
        assertTrue(answers.get(question.contains("initialize") ? 2 : 1).has("result"), "the other one is answered");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "workspace/executeCommand | {\"command\":\"x\"}",
        "textDocument/signatureHelp | {\"textDocument\":{\"uri\":\"file:///a.loom\"},\"position\":"
                + "{\"line\":0,\"character\":0}}",
        "completionItem/resolve | {\"label\":\"x\"}",
        "textDocument/nonsense | {}"})
    void whatTheServerDoesNotDoIsAnUnknownMethod(String method, String params) {
        refused(answers(GREETING, "\"method\":\"" + method + "\",\"params\":" + params).get(2), UNKNOWN_METHOD);
    }

    @Test
    void itIsGreetedOnceBeforeItIsAsked() {
        Map<Integer, JsonObject> answers = answers(SYMBOL, GREETING, GREETING);
        refused(answers.get(1), NOT_INITIALIZED);
        assertTrue(answers.get(2).has("result"));
        refused(answers.get(3), INVALID_REQUEST);
    }

    @Test
    void afterGoodbyeNothingIsAnswered() {
        Map<Integer, JsonObject> answers = answers(GREETING, "\"method\":\"shutdown\"", SYMBOL);
        assertTrue(answers.get(2).has("result"));
        refused(answers.get(3), INVALID_REQUEST);
    }

    @ParameterizedTest
    @ValueSource(strings = {"textDocument/didChange", "textDocument/didOpen", "textDocument/didClose",
        "textDocument/didSave", "workspace/didChangeWatchedFiles", "workspace/didChangeWorkspaceFolders",
        "workspace/didChangeConfiguration", "$/cancelRequest", "window/workDoneProgress/cancel", "$/anything",
        "notAMethod"})
    void aNoteThatMeansNothingIsIgnored(String method) {
        for (String params : List.of("", ",\"params\":null", ",\"params\":{}", ",\"params\":{\"textDocument\":null}",
                ",\"params\":{\"textDocument\":{\"uri\":\"file:///never.loom\"},\"contentChanges\":[]}")) {
            Map<Integer, JsonObject> answers = answers(GREETING, NOTE + "\"method\":\"" + method + "\"" + params,
                    "\"method\":\"shutdown\"");
            assertTrue(answers.get(3).has("result"), answers::toString);
        }
    }
}
