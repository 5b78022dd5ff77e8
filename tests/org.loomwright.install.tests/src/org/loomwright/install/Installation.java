// SPDX-License-Identifier: EPL-2.0
package org.loomwright.install;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A product on disk that is started with the JDK that runs the tests. */
record Installation(Path folder) {

    /** What a run printed (both streams) and how it ended. */
    record Outcome(int exit, String output) {
    }

    /** Copies a product, so that the one that was built stays as it is. */
    static Installation copy(Path product, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(product)) {
            for (Path from : (Iterable<Path>) all::iterator) {
                Path target = to.resolve(product.relativize(from).toString());
                if (Files.isDirectory(from)) {
                    Files.createDirectories(target);
                } else {
                    Files.copy(from, target);
                }
            }
        }
        return new Installation(to);
    }

    /** Runs the product's launcher and waits, at most two minutes. */
    Outcome run(String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add("-jar");
        command.add(launcher().toString());
        command.add("-nosplash");
        command.add("-consoleLog");
        command.addAll(List.of(arguments));
        Path output = Files.createTempFile(folder, "run", ".txt");
        Process process = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
        if (!process.waitFor(2, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new IOException("no end after two minutes: " + command + "\n" + Files.readString(output));
        }
        return new Outcome(process.exitValue(), Files.readString(output, StandardCharsets.UTF_8));
    }

    /** The command that starts an application of the product and goes on. */
    ProcessBuilder starts(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", launcher().toString(),
                "-nosplash", "-consoleLog"));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command).directory(folder.toFile());
    }

    private Path launcher() throws IOException {
        try (Stream<Path> plugins = Files.list(folder.resolve("plugins"))) {
            return plugins.filter(p -> p.getFileName().toString().startsWith("org.eclipse.equinox.launcher_"))
                    .findFirst().orElseThrow(() -> new IOException("no launcher in " + folder));
        }
    }
}
