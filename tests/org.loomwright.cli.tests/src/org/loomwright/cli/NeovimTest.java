// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.google.gson.Gson;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The server with a client that nobody here wrote: Neovim (neovim.io, Debian's package neovim, 0.7 or newer) opens the
 * Orrin, hears of a slip and mends it, completes, hovers, formats, asks who names a place, renames it in all files and
 * jumps. What a person would do stands in {@code neovim-client.lua}.
 */
class NeovimTest {

    private static final Path ORRIN = Path.of(System.getProperty("loomwright.root")).normalize()
            .resolve("docs/examples/orrin");

    @TempDir
    private Path folder;

    private static boolean isThere() {
        return Stream.of(System.getenv("PATH").split(File.pathSeparator))
                .anyMatch(place -> Files.isExecutable(Path.of(place, "nvim")));
    }

    private JsonObject played(Path project) throws IOException, InterruptedException {
        Path script = folder.resolve("client.lua");
        try (InputStream lua = NeovimTest.class.getResourceAsStream("/neovim-client.lua")) {
            Files.write(script, lua.readAllBytes());
        }
        Path result = folder.resolve("result.json");
        List<String> server = List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1", "-Dguice_bytecode_gen_option=DISABLED", "-cp", ProcessTest.classPath(),
                Main.class.getName(), "serve");
        ProcessBuilder builder = new ProcessBuilder("nvim", "--headless", "-u", "NONE", "-i", "NONE", "-n", "-S",
                script.toString()).directory(folder.toFile());
        builder.environment().put("LOOM_PROJECT", project.toString());
        builder.environment().put("LOOM_SERVER", new Gson().toJson(server));
        builder.environment().put("LOOM_RESULT", result.toString());
        for (String home : List.of("HOME", "XDG_CACHE_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME", "XDG_CONFIG_HOME")) {
            builder.environment().put(home, folder.toString());
        }
        builder.redirectErrorStream(true).redirectOutput(folder.resolve("out").toFile());
        Process nvim = builder.start();
        nvim.getOutputStream().close();
        if (!nvim.waitFor(300, TimeUnit.SECONDS)) {
            nvim.destroyForcibly();
        }
        assertTrue(Files.exists(result), () -> "Neovim left nothing: " + text(folder.resolve("out")));
        return JsonParser.parseString(Files.readString(result)).getAsJsonObject();
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            return e.toString();
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        Files.createDirectories(to);
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
    }

    /** The name of a file for each time that it has a word, in order. */
    private static List<String> mentions(Path project, String word) throws IOException {
        List<String> mentions = new ArrayList<>();
        try (Stream<Path> files = Files.list(project)) {
            for (Path file : files.sorted().toList()) {
                int times = Files.readString(file).split("\\b" + word + "\\b", -1).length - 1;
                mentions.addAll(Collections.nCopies(times, file.getFileName().toString()));
            }
        }
        return mentions;
    }

    private static List<String> strings(JsonArray array) {
        List<String> strings = new ArrayList<>();
        array.forEach(each -> strings.add(each.getAsString()));
        return strings;
    }

    @Test
    @Tag("outside")
    void neovimDoesWhatAPersonWouldDo() throws Exception {
        assumeTrue(isThere(), "nvim is not installed");
        Path project = folder.toRealPath().resolve("orrin");
        copy(ORRIN, project);
        JsonObject seen = played(project);
        assertFalse(seen.has("fault"), () -> seen.get("fault").getAsString());
        for (String step : List.of("ready", "diagnosed", "healed", "formatted", "renamed", "jumped", "stopped")) {
            assertTrue(seen.get(step).getAsBoolean(), () -> step + " did not come: " + seen);
        }
        JsonObject diagnostic = seen.getAsJsonObject("diagnostic");
        assertEquals("name-unknown", diagnostic.get("code").getAsString());
        assertEquals(11, diagnostic.get("column").getAsInt(), "the word, not the line");
        assertTrue(diagnostic.get("message").getAsString().contains("bulkheda"));
        assertEquals("    datum bulkhead", seen.get("mended").getAsString());
        assertEquals(List.of("7", "9", "10", "11", "12"), strings(seen.getAsJsonArray("completion")));
        assertTrue(seen.get("hover").getAsString().contains("1005 mm"), seen.get("hover").getAsString());
        assertEquals("catalogue.loom", seen.getAsJsonObject("jump").get("file").getAsString());
        assertTrue(seen.getAsJsonObject("jump").get("line").getAsString().contains("housing bulkhead12Plug"));
        // what was found to name the place is what has its new name now
        assertEquals(mentions(project, "bulkheadShelf"),
                strings(seen.getAsJsonArray("references")).stream().sorted().toList());
        // the renamed project says the same as before
        Call renamed = Call.in(project, "check", ".", "--format", "json");
        assertEquals(Call.in(ORRIN, "check", ".", "--format", "json").code(), renamed.code());
        assertTrue(Files.readString(project.resolve("front-harness.loom")).contains("datum bulkheadShelf"));
        assertFalse(Files.readString(project.resolve("front-harness.loom")).contains("datum bulkhead\n"));
    }
}
