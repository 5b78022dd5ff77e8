// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.testing.Git;

/** The recipes of {@code docs/git.md} and {@code docs/ci.md}, called by the real git program. */
@Tag("outside")
class GitDriversTest {

    private static final String FRONT = """
            // Ours.
            harness front "Front" of orrin {
                connector J1 at bulkhead
                // The main feed.
                circuit 30 "Main feed" BN {
                    wire a 18 ga from J1:1 to J1:2
                    wire b 18 ga from J1:3 to J1:4
                }
            }
            """;

    @TempDir
    private Path temporary;

    private Git git;

    @BeforeEach
    void repository() throws IOException {
        git = Git.init(Files.createDirectory(temporary.resolve("cars")));
        git.write(".gitattributes", "*.loom diff=loom merge=loom\n").write("kits/front.loom", FRONT).commit("base");
        Path program = temporary.resolve("loomwright");
        Files.writeString(program, "#!/bin/sh\nexec '" + Path.of(System.getProperty("java.home"), "bin", "java")
                + "' -XX:TieredStopAtLevel=1 -Dguice_bytecode_gen_option=DISABLED -cp '" + classPath() + "' "
                + Main.class.getName() + " \"$@\"\n");
        assertTrue(program.toFile().setExecutable(true));
        git.run("config", "merge.loom.driver", program + " merge %O %A %B --to %A --marks %L --name %P");
        git.run("config", "diff.loom.textconv", program + " facts");
    }

    /** The class path of this test, however it was started. */
    private static String classPath() {
        if (!(Main.class.getClassLoader() instanceof URLClassLoader loader)) {
            return System.getProperty("java.class.path");
        }
        return Arrays.stream(loader.getURLs()).map(url -> Path.of(URI.create(url.toString())).toString())
                .collect(Collectors.joining(File.pathSeparator));
    }

    private String front() throws IOException {
        return Files.readString(git.folder().resolve("kits/front.loom"));
    }

    private void branches(String ours, String theirs) {
        git.run("checkout", "-q", "-b", "theirs");
        git.write("kits/front.loom", theirs).commit("theirs");
        git.run("checkout", "-q", "main");
        git.write("kits/front.loom", ours).commit("ours");
    }

    @Test
    void theMergeDriverMergesFactsOfOneLine() throws IOException {
        branches(FRONT.replace("J1", "K9"), FRONT.replace("wire a 18 ga", "wire a 16 ga"));
        git.run("merge", "-q", "-m", "both", "theirs");
        assertEquals(FRONT.replace("J1", "K9").replace("wire a 18 ga", "wire a 16 ga"), front());
        assertEquals("", git.run("status", "--porcelain"));
    }

    @Test
    void theMergeDriverLeavesAConflictToTheUser() throws IOException {
        branches(FRONT.replace("wire a 18 ga", "wire a 14 ga").replace("wire b 18 ga", "wire b 16 ga"),
                FRONT.replace("wire a 18 ga", "wire a 16 ga"));
        AssertionError refused = assertThrows(AssertionError.class, () -> git.run("merge", "-q", "theirs"));
        assertTrue(refused.getMessage().contains("kits/front.loom:6: conflict: wire a of circuit 30 of harness front: "
                + "size 14 ga in ours, 16 ga in theirs; was 18 ga"), refused.getMessage());
        assertEquals("UU kits/front.loom\n", git.run("status", "--porcelain"));
        assertTrue(front().contains("<<<<<<< ours\n        wire a 14 ga from J1:1 to J1:2\n=======\n"
                + "        wire a 16 ga from J1:1 to J1:2\n>>>>>>> theirs\n        wire b 16 ga"), front());
        Call check = Call.in(git.folder(), "check", "kits");
        assertEquals(Exit.FINDINGS, check.code());
        assertTrue(check.out().contains("error[merge-conflict]"), check.out());
        assertTrue(check.out().contains("size is 14 ga in ours and 16 ga in theirs"), check.out());
    }

    @Test
    void aFileThatIsNoTextStaysAsItIs() throws IOException {
        git.run("checkout", "-q", "-b", "theirs");
        Files.write(git.folder().resolve("kits/front.loom"), new byte[] {0, 1, 2, 0, 0, 0, 3});
        git.commit("theirs");
        git.run("checkout", "-q", "main");
        git.write("kits/front.loom", FRONT.replace("18 ga", "16 ga")).commit("ours");
        AssertionError refused = assertThrows(AssertionError.class, () -> git.run("merge", "-q", "theirs"));
        assertTrue(refused.getMessage().contains("loomwright: cannot merge kits/front.loom of theirs: the file is"),
                refused.getMessage());
        assertEquals(FRONT.replace("18 ga", "16 ga"), front());
    }

    @Test
    void textconvShowsFactsAndNoLayout() {
        git.write("kits/front.loom", FRONT.replace("    // The main feed.\n", "\n\n")
                .replace("        wire b", "\t\twire   b"));
        assertFalse(git.run("diff").contains("@@"), "a change of layout alone");
        git.write("kits/front.loom", FRONT.replace("wire b 18 ga", "wire b 16 ga"));
        String diff = git.run("diff");
        assertTrue(diff.contains("\n-    size 18 ga\n+    size 16 ga\n"), diff);
    }

    /** Git hands over seven arguments; the third recipe picks out the three that matter. */
    @Test
    void theExternalDiffTellsWhatChanged() {
        git.run("config", "diff.loom.command", "f() { '" + temporary.resolve("loomwright")
                + "' compare --name \"$1\" \"$2\" \"$5\"; test $? -le 1; }; f");
        git.write("kits/front.loom", FRONT.replace("wire b 18 ga", "wire b 16 ga"));
        String diff = git.run("diff");
        assertTrue(diff.contains("front: 1 change that vehicles feel"), diff);
        assertTrue(diff.contains("wire 30b of front: size 18 ga -> 16 ga\n      all of front; kits/front.loom:7"),
                diff);
        git.run("add", "-A");
        git.run("rm", "-q", "--cached", "kits/front.loom");
        String removed = git.run("diff", "--cached");
        assertTrue(removed.contains("harness front \"Front\" removed"), removed);
    }

    /** The hook as {@code docs/ci.md} has it. */
    @Test
    void theHookStopsACommitWithAFindingAndNoOther() throws IOException {
        String document = Files.readString(Path.of(System.getProperty("loomwright.root"), "docs/ci.md"));
        String recipe = document.substring(document.indexOf("```sh\n#!/bin/sh\n# Checks the projects") + 6);
        Path hook = git.folder().resolve(".git/hooks/pre-commit");
        Files.createDirectories(hook.getParent());
        Files.writeString(hook, recipe.substring(0, recipe.indexOf("```")));
        assertTrue(hook.toFile().setExecutable(true));
        Files.copy(temporary.resolve("loomwright"), git.folder().resolve("loomwright"),
                StandardCopyOption.COPY_ATTRIBUTES);
        git.write("README", "no project is touched\n").commit("no project");
        git.write("kits/p/car.loom", "platform car {\n    years 1964 .. 1971\n}\n").commit("good");
        git.write("kits/p/car.loom", "platform car {\n    years 1971 .. 1964\n}\n");
        AssertionError refused = assertThrows(AssertionError.class, () -> git.commit("bad"));
        assertTrue(refused.getMessage().contains("error[range-reversed]"), refused.getMessage());
        git.run("rm", "-q", "-r", "-f", "kits/p");
        git.commit("the project is gone");
        assertEquals("the project is gone\ngood\nno project\nbase\n", git.run("log", "--format=%s"));
    }

    @Test
    void oneVariableDoesTheSameForOneCall() throws IOException {
        Path diff = temporary.resolve("loomdiff");
        Files.writeString(diff, "#!/bin/sh\n'" + temporary.resolve("loomwright")
                + "' compare --name \"$1\" \"$2\" \"$5\"\ntest $? -le 1\n");
        assertTrue(diff.toFile().setExecutable(true));
        git.write("kits/front.loom", FRONT.replace("18 ga from J1:3", "18 ga RD from J1:3"));
        String told = git.run("-c", "diff.external=" + diff, "-c", "diff.loom.command=" + diff, "diff");
        assertTrue(told.contains("wire 30b of front: colour RD added"), told);
    }
}
