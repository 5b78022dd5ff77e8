// SPDX-License-Identifier: EPL-2.0
package org.loomwright.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.opentest4j.TestAbortedException;

/**
 * The real git, working in one folder, with no configuration but its own. Where there is none, tests are skipped and
 * say so.
 *
 * @param folder the work tree
 */
public record Git(Path folder) {

    /** Makes a repository in a folder, with the branch {@code main}. */
    public static Git init(Path folder) {
        Git git = new Git(folder);
        if (!git.works()) {
            throw new TestAbortedException("git is not installed: what works with git is not tested");
        }
        git.run("init", "-q", "-b", "main");
        return git;
    }

    private boolean works() {
        try {
            return new ProcessBuilder("git", "--version").redirectErrorStream(true).start().waitFor() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** Writes a file. */
    public Git write(String name, String text) {
        try {
            Path file = folder.resolve(name);
            Files.createDirectories(file.getParent());
            Files.writeString(file, text);
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Commits everything that is in the work tree. */
    public Git commit(String message) {
        run("add", "-A");
        run("commit", "-q", "--allow-empty", "-m", message);
        return this;
    }

    /** Runs git and returns what it prints; fails when git does. */
    public String run(String... arguments) {
        List<String> call = new ArrayList<>(List.of("git", "-c", "user.name=A. Fitter",
                "-c", "user.email=fitter@example.org", "-c", "protocol.file.allow=always",
                "-c", "core.autocrlf=false"));
        call.addAll(List.of(arguments));
        try {
            ProcessBuilder builder = new ProcessBuilder(call).directory(folder.toFile()).redirectErrorStream(true);
            Map<String, String> environment = builder.environment();
            environment.keySet().removeIf(name -> name.startsWith("GIT_"));
            environment.put("GIT_CONFIG_NOSYSTEM", "1");
            environment.put("GIT_CONFIG_GLOBAL", folder.resolve(".none").toString());
            Process process = builder.start();
            process.getOutputStream().close();
            String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            if (process.waitFor() != 0) {
                throw new AssertionError("git " + String.join(" ", arguments) + ": " + printed);
            }
            return printed;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }
}
