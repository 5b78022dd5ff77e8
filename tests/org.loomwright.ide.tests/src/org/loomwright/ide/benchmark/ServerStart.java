// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.benchmark;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.loomwright.ide.Bench;

/**
 * From the start of {@code ./loomwright serve} to what is wrong with the text of an opened file of the Orrin, and to
 * what the rules say of the whole project, beside how long {@code javac} takes to compile one class in the same run.
 */
public final class ServerStart {

    private static final String FILE = "front-1964.loom";
    /** A finding that only rules give, of a file that is not opened. */
    private static final String RULED = "no-protection";

    private ServerStart() {
    }

    /** @param args how often; the script, if it is another than that of the repository */
    public static void main(String[] args) throws Exception {
        int times = args.length > 0 ? Integer.parseInt(args[0]) : 5;
        Path script = args.length > 1 ? Path.of(args[1]) : Bench.ROOT.resolve("loomwright");
        List<Double> texts = new ArrayList<>();
        List<Double> rules = new ArrayList<>();
        List<Double> java = new ArrayList<>();
        serve(script); // builds what is missing, and the start-up cache
        for (int i = 0; i < times; i++) {
            java.add(compile());
            double[] served = serve(script);
            texts.add(served[0]);
            rules.add(served[1]);
        }
        print("serve, findings of the text", texts, java);
        print("serve, findings of all rules", rules, java);
        print("javac of one class", java, java);
    }

    private static double[] serve(Path script) throws IOException, InterruptedException {
        String text = Files.readString(Bench.ORRIN.resolve(FILE));
        String root = Bench.ORRIN.toUri().toString();
        long begin = System.nanoTime();
        Process server = new ProcessBuilder(script.toString(), "serve").redirectError(
                ProcessBuilder.Redirect.INHERIT).start();
        try (OutputStream out = server.getOutputStream();
                DataInputStream in = new DataInputStream(server.getInputStream())) {
            send(out, "{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\",\"params\":{\"processId\":null,"
                    + "\"rootUri\":" + quoted(root) + ",\"capabilities\":{}}}");
            send(out, "{\"jsonrpc\":\"2.0\",\"method\":\"initialized\",\"params\":{}}");
            send(out, "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{\"textDocument\":{\"uri\":"
                    + quoted(root + FILE) + ",\"languageId\":\"loom\",\"version\":1,\"text\":" + quoted(text) + "}}}");
            double first = 0;
            while (true) {
                String message = receive(in);
                boolean findings = message.contains("textDocument/publishDiagnostics");
                if (first == 0 && findings && message.contains(FILE)) {
                    first = (System.nanoTime() - begin) / 1e9;
                }
                if (findings && message.contains(RULED)) {
                    double all = (System.nanoTime() - begin) / 1e9;
                    send(out, "{\"jsonrpc\":\"2.0\",\"id\":2,\"method\":\"shutdown\"}");
                    send(out, "{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}");
                    return new double[] {first, all};
                }
            }
        } finally {
            server.waitFor();
        }
    }

    private static void send(OutputStream out, String message) throws IOException {
        byte[] bytes = message.getBytes(StandardCharsets.UTF_8);
        out.write(("Content-Length: " + bytes.length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
        out.write(bytes);
        out.flush();
    }

    private static String receive(DataInputStream in) throws IOException {
        int length = 0;
        for (String head = line(in); !head.isEmpty(); head = line(in)) {
            if (head.startsWith("Content-Length: ")) {
                length = Integer.parseInt(head.substring("Content-Length: ".length()));
            }
        }
        byte[] bytes = new byte[length];
        in.readFully(bytes);
        return new String(bytes, StandardCharsets.UTF_8);
    }

    private static String line(InputStream in) throws IOException {
        StringBuilder line = new StringBuilder();
        for (int each = in.read(); each != '\n'; each = in.read()) {
            if (each < 0) {
                throw new IOException("the server ended");
            }
            if (each != '\r') {
                line.append((char) each);
            }
        }
        return line.toString();
    }

    private static String quoted(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n").replace("\t", "\\t") + '"';
    }

    private static double compile() throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("one");
        Path source = Files.writeString(folder.resolve("One.java"), "class One {\n    int one = 1;\n}\n");
        long begin = System.nanoTime();
        new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin/javac").toString(), "-d", folder.toString(),
                source.toString()).inheritIO().start().waitFor();
        double seconds = (System.nanoTime() - begin) / 1e9;
        Files.delete(source);
        Files.delete(folder.resolve("One.class"));
        Files.delete(folder);
        return seconds;
    }

    private static void print(String what, List<Double> times, List<Double> outside) {
        List<Double> sorted = times.stream().sorted().toList();
        double median = sorted.get(sorted.size() / 2);
        System.out.printf(Locale.ROOT, "%-30s median %.2f s, least %.2f, greatest %.2f; %.1f times javac%n", what,
                median, sorted.getFirst(), sorted.getLast(), median / outside.stream().sorted().toList()
                        .get(outside.size() / 2));
    }
}
