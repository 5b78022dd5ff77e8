// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.workbench.start.StartTrace;

/**
 * How long the product takes from its script to the Orrin's editor with its findings, beside how long {@code javac}
 * takes to compile one class in the same run. By hand ({@code -Dtest=StartByHand}, after the product was built); prints,
 * and decides nothing.
 */
class StartByHand {

    private static final Path PRODUCT = Path.of(System.getProperty("loomwright.root")).resolve(
            "releng/org.loomwright.product/target/products/loomwright/linux/gtk/x86_64/loomwright");
    private static final int STARTS = Integer.getInteger("loomwright.starts", 4);

    @TempDir
    private Path folder;

    @Test
    void fromTheScriptToTheFindings() throws Exception {
        Path workspace = folder.resolve("workspace");
        try (OtherWorkbench first = OtherWorkbench.start(Session.LEAVE, workspace, folder, "first")) {
            first.ready();
            first.ended();
        }
        Path options = Files.writeString(folder.resolve("options"), StartTrace.OPTION + "=true\n");
        for (int start = 1; start <= STARTS; start++) {
            double java = compile();
            double shown = start(workspace, options, start);
            System.out.printf(Locale.ROOT, "start %d: %.1f s, and javac of one class %.1f s: %.1f times as long%n",
                    start, shown, java, shown / java);
        }
    }

    /** Seconds until the product has said that the text is shown; it is ended as one ends a program. */
    private double start(Path workspace, Path options, int number) throws Exception {
        Path output = folder.resolve("start" + number + ".txt");
        long begin = System.nanoTime();
        ProcessBuilder command = new ProcessBuilder(PRODUCT.resolve("loomwright-workbench").toString(), "-data",
                workspace.toString(), "-nosplash", "-debug", options.toString());
        command.environment().put("JAVA_HOME", System.getProperty("java.home"));
        command.environment().put("XDG_CACHE_HOME", folder.resolve("kept").toString());
        Process process = command.redirectErrorStream(true).redirectOutput(output.toFile()).start();
        try {
            while (!Files.readString(output).contains(" is shown with ")) {
                assertTrue(process.isAlive() && System.nanoTime() - begin < TimeUnit.MINUTES.toNanos(5),
                        Files.readString(output));
                Thread.sleep(20);
            }
            double seconds = (System.nanoTime() - begin) / 1e9;
            Files.readAllLines(output).stream().filter(each -> each.contains(" is shown with "))
                    .forEach(System.out::println);
            Thread.sleep(5_000);
            return seconds;
        } finally {
            process.children().forEach(ProcessHandle::destroy);
            assertTrue(process.waitFor(2, TimeUnit.MINUTES), "it does not end");
        }
    }

    private double compile() throws Exception {
        Path source = Files.writeString(folder.resolve("One.java"), "class One {\n    int one = 1;\n}\n");
        long begin = System.nanoTime();
        Process javac = new ProcessBuilder(List.of(Path.of(System.getProperty("java.home"), "bin/javac").toString(),
                "-d", folder.toString(), source.toString())).inheritIO().start();
        assertTrue(javac.waitFor() == 0, "javac");
        return (System.nanoTime() - begin) / 1e9;
    }
}
