// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.loomwright.app.BadCall;
import picocli.CommandLine;

/**
 * Does a little of what calls of one kind do on an example, so that a start-up cache of the Java virtual machine knows
 * the classes that they need, and few others: all that such a cache holds is loaded at each start. Prints nothing,
 * writes to a temporary folder only, and always ends with 0: where something fails, the start of that is slower, and
 * nothing else is lost.
 */
public final class Rehearsal {

    private static final int PATIENCE_MS = 4_000;

    private final Path example;
    private final Path scratch;
    private final List<Integer> codes = new ArrayList<>();
    private final PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream());

    private Rehearsal(Path example, Path scratch) {
        this.example = example;
        this.scratch = scratch;
    }

    /**
     * Takes what to rehearse, {@code check}, {@code since}, {@code serve} or the {@code rest}, and the folder of the
     * example.
     */
    public static void main(String[] args) throws IOException {
        rehearse(args[0], Path.of(args[1]));
        System.exit(Exit.FINE);
    }

    /** Returns the exit codes of what was done. */
    static List<Integer> rehearse(String kind, Path example) throws IOException {
        Path scratch = Files.createTempDirectory("loomwright");
        try {
            return new Rehearsal(example.toAbsolutePath(), scratch).play(kind);
        } finally {
            try (Stream<Path> files = Files.walk(scratch)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
    }

    private List<Integer> play(String kind) throws IOException {
        switch (kind) {
            case "check" -> check();
            case "since" -> since();
            case "serve" -> codes.add(serve());
            default -> rest();
        }
        return codes;
    }

    /** Anew, as it was kept, and with one file that is not what was kept. */
    private void check() throws IOException {
        run("check", example.toString());
        run("check", example.toString());
        run("check", "--format", "json", "--no-cache", revised().toString());
    }

    /** With what was kept, of a project that git has and of one that is edited; nobody knows whether git has either. */
    private void since() throws IOException {
        run("check", example.toString());
        run("check", "--since", "HEAD", example.toString());
        Path copy = revised();
        run("check", copy.toString());
        Path last = copy.resolve(sources().getLast().getFileName());
        Files.writeString(last, Files.readString(last) + "// once more\n");
        run("check", "--since", "HEAD", copy.toString());
    }

    private void rest() throws IOException {
        run("check", example.toString());
        run("compare", example.toString(), revised().toString());
        run("fit", example.toString());
        run("electric", example.toString());
        run("sheets", example.toString(), "frontKit", "--only", "wire-list", "--to", scratch.resolve("set").toString());
    }

    private void run(String... args) {
        codes.add(Main.run(args, new Door(nowhere, nowhere, scratch, Map.of("LOOMWRIGHT_CACHE", scratch.resolve("cache")
                .toString()), false, false)));
    }

    /** The example with a line more in one file. */
    private Path revised() throws IOException {
        Path copy = scratch.resolve("revised");
        if (!Files.exists(copy)) {
            Files.createDirectory(copy);
            List<Path> sources = sources();
            for (Path source : sources) {
                Files.copy(source, copy.resolve(source.getFileName()));
            }
            Path last = copy.resolve(sources.getLast().getFileName());
            Files.writeString(last, Files.readString(last) + "// revised\n");
        }
        return copy;
    }

    private List<Path> sources() throws IOException {
        try (Stream<Path> files = Files.list(example)) {
            return files.filter(file -> file.toString().endsWith(".loom")).sorted().toList();
        }
    }

    /** An editor that opens a file, waits for what is wrong with it, asks for words and leaves. */
    private int serve() throws IOException {
        Path file = revised().resolve(sources().getFirst().getFileName());
        String uri = "\"uri\":\"" + file.toUri() + "\"";
        String spot = "{\"textDocument\":{" + uri + "},\"position\":{\"line\":12,\"character\":4}}";
        List<InputStream> input = new ArrayList<>();
        input.add(messages(request(1, "initialize", "{\"processId\":null,\"capabilities\":{},\"rootUri\":\""
                + file.getParent().toUri() + "\",\"workspaceFolders\":[{\"uri\":\"" + file.getParent().toUri()
                + "\",\"name\":\"example\"}]}"),
                notice("initialized", "{}"),
                notice("textDocument/didOpen", "{\"textDocument\":{" + uri + ",\"languageId\":\"loom\",\"version\":1,"
                        + "\"text\":" + quoted(Files.readString(file)) + "}}")));
        input.add(new Waiting());
        input.add(messages(request(2, "textDocument/completion", spot), request(3, "textDocument/hover", spot),
                request(4, "shutdown", "null"), notice("exit", "null")));
        InputStream all = new SequenceInputStream(Collections.enumeration(input));
        try {
            ServeCommand command = new ServeCommand(() -> all);
            return command.run(new CommandLine(Commands.spec(command)).parseArgs(), Language.whenAsked(),
                    new Door(nowhere, nowhere, scratch, Map.of(), false, false));
        } catch (BadCall | RuntimeException e) {
            return Exit.FAULT; // then a server starts more slowly
        }
    }

    /** Is empty, after a while. */
    private static final class Waiting extends InputStream {

        @Override
        public int read() {
            try {
                Thread.sleep(PATIENCE_MS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            return -1;
        }
    }

    private static String request(int id, String method, String parameters) {
        return "{\"jsonrpc\":\"2.0\",\"id\":" + id + ",\"method\":\"" + method + "\",\"params\":" + parameters + "}";
    }

    private static String notice(String method, String parameters) {
        return "{\"jsonrpc\":\"2.0\",\"method\":\"" + method + "\",\"params\":" + parameters + "}";
    }

    private static InputStream messages(String... bodies) {
        StringBuilder text = new StringBuilder();
        for (String body : bodies) {
            text.append("Content-Length: ").append(body.getBytes(StandardCharsets.UTF_8).length).append("\r\n\r\n")
                    .append(body);
        }
        return new ByteArrayInputStream(text.toString().getBytes(StandardCharsets.UTF_8));
    }

    private static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        text.chars().forEach(each -> quoted.append(each < ' ' || each == '"' || each == '\\'
                ? String.format("\\u%04x", each) : String.valueOf((char) each)));
        return quoted.append('"').toString();
    }
}
