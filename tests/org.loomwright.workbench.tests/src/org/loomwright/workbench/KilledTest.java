// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.eclipse.core.runtime.Platform;
import org.eclipse.core.runtime.URIUtil;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A workbench that is killed: the next one has the project, what was typed, and what is wrong with the files. */
class KilledTest {

    private static final long PATIENCE = TimeUnit.MINUTES.toMillis(5);

    @TempDir
    private Path folder;

    @Test
    void theNextStartHasTheProjectAndFindsWhatWasWrittenMeanwhile() throws Exception {
        Path workspace = folder.resolve("workspace");
        Process first = session(Session.WORK, workspace, "first");
        try {
            ready(first, "first");
        } finally {
            first.destroyForcibly();
        }
        assertTrue(first.waitFor(20, TimeUnit.SECONDS));
        Files.writeString(workspace.resolve(Session.PROJECT).resolve("outside.loom"),
                "drawing outside of orin {\n}\n");
        Process second = session(Session.LOOK, workspace, "second");
        List<String> told;
        try {
            told = ready(second, "second");
        } finally {
            second.destroyForcibly();
        }
        assertTrue(second.waitFor(20, TimeUnit.SECONDS));
        assertEquals(List.of("project true", "typed text true", "saved mistake true", "outside mistake true"),
               
                told.stream().filter(each -> each.matches("(project|typed|saved|outside) .*")).toList());
    }

    /** Starts a workbench like the one that runs this, on another workspace. */
    private Process session(String what, Path workspace, String name) throws Exception {
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
        return new ProcessBuilder(command).redirectErrorStream(true)
                .redirectOutput(folder.resolve(name + ".txt").toFile()).start();
    }

    /** Waits until it says that it is ready, and gives what it told. */
    private List<String> ready(Process process, String name) throws IOException, InterruptedException {
        Path output = folder.resolve(name + ".txt");
        long end = System.currentTimeMillis() + PATIENCE;
        while (!Files.readString(output).contains(Session.READY)) {
            assertTrue(process.isAlive() && System.currentTimeMillis() < end
                    && !Files.readString(output).contains("failed: "), Files.readString(output));
            Thread.sleep(200);
        }
        return Files.readAllLines(output);
    }
}
