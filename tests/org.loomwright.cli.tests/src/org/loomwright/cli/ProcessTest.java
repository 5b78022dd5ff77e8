// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command line as a process of its own. */
class ProcessTest {

    private static final int MOST_CLASSES = 7_500;

    @TempDir
    private Path folder;

    @BeforeEach
    void project() throws IOException {
        StringBuilder text = new StringBuilder("platform orrin \"Orrin ± 1200\" {\n    years 1964 .. 1971\n}\n");
        for (int i = 0; i < 900; i++) {
            text.append("waive w").append(i).append(": orphan-wire on orrin because \"± ").append(i).append("\"\n");
        }
        Files.writeString(folder.resolve("w.loom"), text);
    }

    private Process start(List<String> options, String... args) throws IOException {
        return start(Map.of(), options, args);
    }

    private Process start(Map<String, String> environment, List<String> options, String... args) throws IOException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        List<String> command = new ArrayList<>(List.of(java, "-XX:TieredStopAtLevel=1",
                "-Dguice_bytecode_gen_option=DISABLED"));
        command.addAll(options);
        command.addAll(List.of("-cp", classPath(), Main.class.getName()));
        command.addAll(List.of(args));
        ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
        builder.redirectError(folder.resolve("err").toFile());
        builder.environment().put(Caches.FOLDER, "off");
        environment.forEach(builder.environment()::put);
        return builder.start();
    }

    /** The class path of this test, however it was started. */
    static String classPath() {
        if (!(Main.class.getClassLoader() instanceof URLClassLoader loader)) {
            return System.getProperty("java.class.path");
        }
        return Arrays.stream(loader.getURLs()).map(url -> Path.of(URI.create(url.toString())).toString())
                .collect(Collectors.joining(File.pathSeparator));
    }

    private int end(Process process) throws InterruptedException {
        assertTrue(process.waitFor(120, TimeUnit.SECONDS), "does not end");
        return process.exitValue();
    }

    @Test
    void printsUtf8WhateverTheEncodingOfTheMachineAndNothingElse() throws Exception {
        Process process = start(List.of("-Dstdout.encoding=US-ASCII", "-Dfile.encoding=ISO-8859-1",
                "-Duser.language=tr"), "check", "w.loom", "--all");
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(Exit.FINDINGS, end(process));
        assertEquals("", Files.readString(folder.resolve("err")));
        assertEquals(Call.in(folder, "check", "w.loom", "--all").out(), out);
        assertTrue(out.contains("\"± 899\""), "the text is cut");
    }

    @Test
    void aReaderThatStopsReadingIsNoFault() throws Exception {
        Process process = start(List.of(), "check", "w.loom", "--all");
        try (InputStream out = process.getInputStream()) {
            assertTrue(out.read() >= 0);
        }
        assertEquals(Exit.FINDINGS, end(process));
        assertEquals("", Files.readString(folder.resolve("err")));
    }

    @Test
    void checkLoadsNoMoreThanItNeeds() throws Exception {
        Path log = folder.resolve("classes");
        Process process = start(List.of("-Xlog:class+load:file=" + log), "check", "w.loom", "--quiet");
        process.getInputStream().readAllBytes();
        assertEquals(Exit.FINDINGS, end(process));
        List<String> classes = Files.readAllLines(log);
        for (String needless : List.of("org.apache.commons.csv", "com.google.gson", "org.apache.log4j.ConsoleAppender",
                "org.loomwright.fit.ChainJudge", "org.loomwright.app.sheet.", "org.loomwright.sheets",
                "org.apache.pdfbox", "org.eclipse.elk", "java.beans", "org.eclipse.jgit", "org.loomwright.app.revision",
                "org.slf4j", "org.ojalgo")) {
            assertFalse(classes.stream().anyMatch(line -> line.contains(needless)), needless);
        }
        assertTrue(classes.stream().anyMatch(line -> line.contains("org.loomwright.rules.Report ")), "a log");
        assertTrue(classes.size() < MOST_CLASSES, () -> classes.size() + " classes");
    }

    @Test
    void anAnswerThatWasKeptNeedsNoLanguageAndNoRule() throws Exception {
        List<String> first = List.of();
        for (int call = 1; call <= 2; call++) {
            Path log = folder.resolve("classes" + call);
            Process process = start(Map.of(Caches.FOLDER, folder.resolve("kept").toString()),
                    List.of("-Dloomwright.build=this", "-Xlog:class+load:file=" + log), "check", "w.loom");
            List<String> out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).lines()
                    .toList();
            assertEquals(Exit.FINDINGS, end(process));
            assertTrue(call == 1 || first.equals(out), "what is printed");
            first = out;
        }
        List<String> cold = Files.readAllLines(folder.resolve("classes1"));
        List<String> warm = Files.readAllLines(folder.resolve("classes2"));
        for (String needless : List.of("org.eclipse.", "com.google.", "org.antlr.", "org.logicng.",
                "org.loomwright.lang.LoomReader", "org.loomwright.rules.standard", "org.loomwright.rules.wiring",
                "org.loomwright.harness.link")) {
            assertTrue(cold.stream().anyMatch(line -> line.contains(needless)) || needless.startsWith("com.google"),
                    needless);
            assertFalse(warm.stream().anyMatch(line -> line.contains(needless)), needless);
        }
        assertTrue(warm.size() < 2_000, () -> warm.size() + " classes");
    }
}
