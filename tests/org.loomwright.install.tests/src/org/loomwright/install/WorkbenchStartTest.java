// SPDX-License-Identifier: EPL-2.0
package org.loomwright.install;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The workbench comes up: unpacked from its archive, and installed from the update site into a product without it. */
class WorkbenchStartTest {

    private static final Path ROOT = Path.of(System.getProperty("loomwright.root"));
    private static final Path SITE = ROOT.resolve("releng/org.loomwright.site/target/repository");
    private static final Path BASE = ROOT.resolve("tests/org.loomwright.install.product/target/products")
            .resolve("org.loomwright.install.product/linux/gtk/x86_64");
    private static final Path PRODUCT = ROOT.resolve("releng/org.loomwright.product/target/products")
            .resolve("loomwright/linux/gtk/x86_64/loomwright");
    private static final long PATIENCE = TimeUnit.SECONDS.toMillis(90);

    @TempDir
    Path temporary;

    @BeforeEach
    void aDisplayIsThere() {
        Assumptions.assumeTrue(System.getenv("DISPLAY") != null, "no display");
    }

    @Test
    void theArchiveStartsWithItsScriptAndLogsNothing() throws Exception {
        Path workspace = temporary.resolve("workspace");
        ProcessBuilder start = new ProcessBuilder(PRODUCT.resolve("loomwright-workbench").toString(), "-data",
                workspace.toString(), "-nosplash", "-consoleLog");
        start.environment().put("JAVA_HOME", System.getProperty("java.home"));
        start.environment().put("XDG_CACHE_HOME", temporary.resolve("cache").toString());
        comesUp(start, workspace);
    }

    @Test
    void theFeatureGoesFromTheSiteIntoAProductWithoutItAndStarts() throws Exception {
        Installation installation = Installation.copy(BASE, temporary.resolve("product"));
        Installation.Outcome installed = installation.run("-application", "org.eclipse.equinox.p2.director",
                "-repository", SITE.toUri().toString(), "-installIU",
                "org.loomwright.workbench.feature.feature.group");
        assertEquals(0, installed.exit(), installed.output());
        Path workspace = temporary.resolve("workspace");
        comesUp(installation.starts("-application", "org.eclipse.ui.ide.workbench", "-product",
                "org.loomwright.workbench.product", "-data", workspace.toString()), workspace);
    }

    /** Waits for the window, ends the process, and looks at what was logged. */
    private void comesUp(ProcessBuilder start, Path workspace) throws IOException, InterruptedException {
        Path output = temporary.resolve("output.txt");
        start.environment().put("GDK_BACKEND", "x11");
        Process process = start.redirectErrorStream(true).redirectOutput(output.toFile()).start();
        try {
            long end = System.currentTimeMillis() + PATIENCE;
            while (!windows().contains("\"workspace - Loomwright")) {
                assertTrue(process.isAlive(), () -> "ended: " + read(output));
                assertTrue(System.currentTimeMillis() < end, () -> "no window: " + read(output));
                Thread.sleep(250);
            }
            Thread.sleep(1_000);
        } finally {
            // the program writes what its next start is quicker by before it ends
            for (ProcessHandle each : process.descendants().toList()) {
                each.destroy();
                each.onExit().completeOnTimeout(each, 60, TimeUnit.SECONDS).join();
                each.destroyForcibly();
            }
            process.destroy();
            process.waitFor(20, TimeUnit.SECONDS);
            process.destroyForcibly();
        }
        Path log = workspace.resolve(".metadata/.log");
        assertEquals(List.of(), Files.exists(log) ? Files.readAllLines(log).stream()
                .filter(line -> line.startsWith("!ENTRY") || line.startsWith("!MESSAGE")).toList() : List.of());
    }

    private String windows() throws IOException, InterruptedException {
        Process list = new ProcessBuilder("xwininfo", "-root", "-tree").redirectErrorStream(true).start();
        String all = new String(list.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        list.waitFor();
        return all;
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            return e.toString();
        }
    }
}
