// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.testing.Git;

/** {@code check --since}: only what a change brought counts. */
class SinceTest {

    private static final String PLATFORM = "platform orrin {\n    years 1964 .. 1971\n}\n";

    @TempDir
    private Path temporary;

    private Path folder;
    private Git git;

    @BeforeEach
    void repository() throws Exception {
        folder = Files.createDirectory(temporary.resolve("cars"));
        git = Git.init(folder);
        git.write("p/orrin.loom", PLATFORM + waiver("old") + waiver("mended")).commit("two waivers for nothing");
        git.run("tag", "v1");
    }

    /** A waiver that nothing needs is a finding. */
    private static String waiver(String name) {
        return "waive " + name + ": orphan-wire on orrin because \"a test\"\n";
    }

    @Test
    void whatWasThereIsSetAsideWhereverItStandsNow() {
        git.write("p/orrin.loom", "// moved down\n\n\n" + PLATFORM + waiver("old") + waiver("mended"));
        Call call = Call.in(folder, "check", "p", "--since", "v1").isFine();
        assertTrue(call.out().contains("since v1: 0 are new, 2 were there, 0 are gone\n"), call.out());
        assertFalse(call.out().contains("-->"), call.out());
        assertEquals(Exit.FINDINGS, Call.in(folder, "check", "p").code());
    }

    @Test
    void whatIsNewCounts() {
        git.write("p/orrin.loom", PLATFORM + waiver("fresh") + waiver("old"));
        Call call = Call.in(folder, "check", "p", "--since", "v1");
        assertEquals(Exit.FINDINGS, call.code(), call::toString);
        assertTrue(call.out().contains("p/orrin.loom:4:"), call.out());
        assertFalse(call.out().contains("p/orrin.loom:5:"), call.out());
        assertTrue(call.out().contains("since v1: 1 is new, 1 was there, 1 is gone\n"), call.out());
        JsonObject json = JsonParser.parseString(Call.in(folder, "check", "p", "--since", "v1", "--format", "json")
                .out()).getAsJsonObject();
        assertEquals("{\"revision\":\"v1\",\"known\":1,\"gone\":1}", json.get("since").toString());
        assertFalse(json.get("passes").getAsBoolean());
    }

    @Test
    void singleFilesAreHeldAgainstThemselves() {
        git.write("p/more.loom", waiver("more"));
        Call call = Call.in(folder.resolve("p"), "check", "orrin.loom", "more.loom", "--since", "HEAD");
        assertEquals(Exit.FINDINGS, call.code(), call::toString);
        assertTrue(call.out().contains("more.loom:1:") && call.out().contains("1 is new, 2 were there"), call.out());
    }

    @Test
    void aNewProjectIsNewAltogether() {
        git.write("q/orrin.loom", PLATFORM + waiver("w"));
        Call call = Call.in(folder, "check", "q", "p", "--since", "v1");
        assertEquals(Exit.FINDINGS, call.code(), call::toString);
        assertTrue(call.out().contains("since v1: 1 is new, 2 were there, 0 are gone; not there then: q\n"),
                call.out());
    }

    @Test
    void lineEndsThatGitWritesAreNoChange() {
        git.write(".gitattributes", "*.loom text eol=crlf\n");
        git.write("p/orrin.loom", (PLATFORM + waiver("old") + waiver("mended")).replace("\n", "\r\n"));
        assertTrue(Call.in(folder, "check", "p", "--since", "v1").isFine().out().contains("0 are new, 2 were there"));
    }

    @Test
    void aProblemOfTheTextIsNeverSetAside() {
        git.write("p/orrin.loom", PLATFORM + "nonsense\n").commit("damaged");
        assertEquals(Exit.FINDINGS, Call.in(folder, "check", "p", "--since", "HEAD").code());
    }

    @Test
    void whatCannotBeReadIsSaidInOneLine() {
        Call.in(folder, "check", "p", "--since", "v2").isRefused("no revision is called 'v2'; there is main, v1");
        Call.in(folder, "check", "p", "--since", "").isRefused("no revision is called ''");
    }

    @Test
    void aFolderOutsideOfGitIsRefused() throws Exception {
        Files.writeString(temporary.resolve("x.loom"), PLATFORM);
        Call.in(temporary, "check", "x.loom", "--since", "HEAD").isRefused("there is no git repository here: ");
    }
}
