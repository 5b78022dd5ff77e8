// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.eclipse.core.runtime.Platform;
import org.eclipse.core.runtime.URIUtil;

/** A workbench in a process of its own, made of the same bundles as the one that runs the tests; see {@link Session}. */
final class OtherWorkbench implements AutoCloseable {

    private static final long PATIENCE = TimeUnit.MINUTES.toMillis(5);

    private final Process process;
    private final Path output;

    private OtherWorkbench(Process process, Path output) {
        this.process = process;
        this.output = output;
    }

    /**
     * Starts one.
     *
     * @param what   what it does
     * @param folder for its configuration and what it says
     * @param name   of this start among those with the same folder
     * @param more   arguments besides
     */
    static OtherWorkbench start(String what, Path workspace, Path folder, String name, String... more)
            throws Exception {
        List<String> own = List.of(ProcessHandle.current().info().arguments().orElseThrow());
        int launcher = own.indexOf("-jar");
        Path configuration = Files.createDirectories(folder.resolve("configuration-" + name));
        Files.copy(Path.of(URIUtil.toURI(Platform.getConfigurationLocation().getURL())).resolve("config.ini"),
                configuration.resolve("config.ini"));
        List<String> command = new ArrayList<>(List.of(ProcessHandle.current().info().command().orElseThrow()));
        command.addAll(own.subList(0, launcher));
        command.addAll(List.of("-D" + Session.PROPERTY + "=" + what, "-jar", own.get(launcher + 1), "-nosplash",
                "-data", workspace.toString(), "-configuration", configuration.toString(), "-application",
                "org.eclipse.ui.ide.workbench", "-product", "org.loomwright.workbench.product"));
        command.addAll(List.of(more));
        Path output = folder.resolve(name + ".txt");
        return new OtherWorkbench(new ProcessBuilder(command).redirectErrorStream(true)
                .redirectOutput(output.toFile()).start(), output);
    }

    /** Waits until it says that it is ready, and gives what it told. */
    List<String> ready() throws IOException, InterruptedException {
        long end = System.currentTimeMillis() + PATIENCE;
        while (!Files.readString(output).contains(Session.READY)) {
            assertTrue(process.isAlive() && System.currentTimeMillis() < end
                    && !Files.readString(output).contains("failed: "), Files.readString(output));
            Thread.sleep(200);
        }
        return Files.readAllLines(output);
    }

    /** Waits until it ends by itself. */
    void ended() throws InterruptedException {
        assertTrue(process.waitFor(PATIENCE, TimeUnit.MILLISECONDS), "it does not end");
    }

    /** Kills it: it cannot do anything more. */
    @Override
    public void close() throws InterruptedException {
        process.destroyForcibly();
        assertTrue(process.waitFor(20, TimeUnit.SECONDS), "it cannot be killed");
    }
}
