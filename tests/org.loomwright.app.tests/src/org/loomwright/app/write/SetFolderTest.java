// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.write;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;

/** A set is there whole, the earlier one or the new one, whatever happens to the process that writes it. */
class SetFolderTest {

    private static final int FILES = 12;
    private static final int LINES = 3_000;
    private static final int KILLS = 8;
    /** Kills fall within this time of the end of the first generation; one takes some milliseconds. */
    private static final int LONGEST_MICROSECONDS = 60_000;

    @TempDir
    private Path base;

    /** Writes generations into a folder until it is killed. */
    public static final class Writer {

        private Writer() {
        }

        public static void main(String[] args) throws BadCall {
            Path base = Path.of(args[0]);
            long generation = Long.parseLong(args[1]);
            SetFolder.at(base, "set").replace(set(generation));
            System.out.println("writing");
            while (true) {
                SetFolder.at(base, "set").replace(set(++generation));
            }
        }
    }

    /** A set of which each file says in each line of which generation it is; some have files that others lack. */
    private static Map<String, byte[]> set(long generation) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (int i = 0; i < FILES + generation % 3; i++) {
            files.put(i + ".csv", ("generation " + generation + "\n").repeat(LINES + 40 * i)
                    .getBytes(StandardCharsets.UTF_8));
        }
        return files;
    }

    /** The generation of the set that is there; -1 when it is not whole. */
    private long generation() throws Exception {
        Map<String, byte[]> found = new TreeMap<>();
        try (Stream<Path> files = Files.list(base.resolve("set"))) {
            for (Path file : files.filter(each -> each.toString().endsWith(".csv")).toList()) {
                found.put(file.getFileName().toString(), Files.readAllBytes(file));
            }
        }
        String first = new String(found.getOrDefault("0.csv", new byte[0]), StandardCharsets.UTF_8);
        if (!first.startsWith("generation ")) {
            return -1;
        }
        long generation = Long.parseLong(first.lines().findFirst().orElseThrow().substring(11));
        Map<String, byte[]> whole = set(generation);
        return found.keySet().equals(whole.keySet()) && found.entrySet().stream()
                .allMatch(each -> java.util.Arrays.equals(each.getValue(), whole.get(each.getKey()))) ? generation : -1;
    }

    private List<String> beside() throws Exception {
        try (Stream<Path> files = Files.list(base)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void killedAtAnyMomentASetIsWhole() throws Exception {
        SetFolder.at(base, "set").replace(set(0));
        Random random = new Random(11);
        List<String> faults = new ArrayList<>();
        long complete = 0;
        int halfway = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx64m", "-cp", KillsWhileWriting.classPath(),
                    Writer.class.getName(), base.toString(), Long.toString(complete + 1)).redirectErrorStream(true)
                    .start();
            try (BufferedReader out = new BufferedReader(
                    new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
                assertEquals("writing", out.readLine());
                TimeUnit.MICROSECONDS.sleep(random.nextInt(LONGEST_MICROSECONDS));
            } finally {
                process.destroyForcibly().waitFor();
            }
            halfway += beside().size() > 1 ? 1 : 0;
            SetFolder.at(base, "set");
            long now = generation();
            if (now <= complete) {
                faults.add("kill " + kill + ": generation " + now + " after " + complete);
            }
            if (!beside().equals(List.of("set"))) {
                faults.add("kill " + kill + " left " + beside());
            }
            complete = Math.max(complete, now);
        }
        assertEquals(List.of(), faults);
        assertTrue(halfway > 0, "no kill fell into a write");
    }

    /** A process that is killed between moving the old set aside and the new one in. */
    @Test
    void whatWasMovedAsideIsPutBack() throws Exception {
        SetFolder.at(base, "set").replace(set(3));
        long dead = dead();
        Files.move(base.resolve("set"), base.resolve(".set." + dead + ".old"));
        Path half = Files.createDirectory(base.resolve(".set." + dead + ".new"));
        Files.writeString(half.resolve(".loomwright-sheets"), "0.csv\n1.csv\n");
        Files.writeString(half.resolve("0.csv"), "generation 4\n");
        SetFolder.at(base, "set");
        assertEquals(3, generation());
        assertEquals(List.of("set"), beside());
    }

    /** A set that cannot be written, since a name in it is no name of a file. */
    @Test
    void afterAFailureTheEarlierSetIsAsItWas() throws Exception {
        SetFolder folder = SetFolder.at(base, "set");
        folder.replace(set(5));
        Map<String, byte[]> bad = new LinkedHashMap<>(set(6));
        bad.put("no such folder/x.csv", new byte[1]);
        assertTrue(assertThrows(BadCall.class, () -> folder.replace(bad)).getMessage()
                .startsWith("cannot write to set: "));
        assertEquals(5, generation());
        assertEquals(List.of("set"), beside());
    }

    private static long dead() throws Exception {
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-version").redirectErrorStream(true).start();
        process.getInputStream().readAllBytes();
        process.waitFor();
        return process.pid();
    }
}
