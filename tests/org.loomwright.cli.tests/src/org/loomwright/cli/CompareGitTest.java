// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.testing.Git;

/** {@code compare} on revisions that the real git program wrote. */
@Tag("outside")
class CompareGitTest {

    private static final String PLATFORM = """
            platform orrin "Orrin 1200" {
                years 1964 .. 1971
                position front
                place bulkhead
                place lamp
            }
            drawing front64 "Front 1964" of orrin fills front {
                tolerance ± 2 mm
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                }
                branch b1 from wing to lamp 200 mm
            }
            """;

    private static final String OURS = """
            harness ours "Front" of orrin fills front {
                covers front64
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                }
                branch b1 from wing to lamp 250 mm
            }
            kit box "Front kit" revision "A" of orrin {
                contains ours
            }
            """;

    private static final String SHORT = OURS.replace("lamp 250 mm", "lamp 190 mm");
    private static final String SAYS = "branch b1 of ours: length 250 mm -> 190 mm";

    @TempDir
    private Path temporary;

    private Path folder;
    private Git git;

    @BeforeEach
    void repository() throws IOException {
        folder = Files.createDirectory(temporary.resolve("cars"));
        git = Git.init(folder);
        git.write("kits/p/orrin.loom", PLATFORM).write("kits/p/ours.loom", OURS).commit("as it was");
        git.run("tag", "v1");
        git.write("kits/p/ours.loom", SHORT).commit("shorter");
    }

    private Call compare(String... arguments) {
        return compareIn(folder, arguments);
    }

    private static Call compareIn(Path where, String... arguments) {
        String[] all = new String[arguments.length + 1];
        all[0] = "compare";
        System.arraycopy(arguments, 0, all, 1, arguments.length);
        return Call.in(where, all);
    }

    /** Without its project a file has no vehicles that it does not fit any more. */
    private static void saysOfOneFile(Call call) {
        assertTrue(call.isFine().out().contains(SAYS + "\n      all of ours; ours.loom:7\n"), call::toString);
    }

    private static void says(Call call, String words) {
        assertEquals(Exit.FINDINGS, call.code(), call::toString);
        assertTrue(call.out().contains(words), call::toString);
        assertEquals("", call.err());
    }

    @Test
    void aRevisionIsHeldAgainstTheWorkTree() {
        says(compare("v1", "kits/p"), SAYS + "\n      every vehicle; kits/p/ours.loom:7");
        says(compareIn(folder.resolve("kits/p"), "v1", "."), SAYS);
        saysOfOneFile(compareIn(folder.resolve("kits/p"), "v1", "ours.loom"));
    }

    @Test
    void aPathBehindARevisionStartsAtTheTopOrHere() {
        says(compare("v1:kits/p", "kits/p"), SAYS);
        says(compareIn(folder.resolve("kits"), "v1:kits/p", "HEAD:./p"), SAYS);
        saysOfOneFile(compareIn(folder.resolve("kits/p"), "v1:kits/p/ours.loom", "ours.loom"));
    }

    @Test
    void aRangeHasBothSides() {
        says(compare("v1..HEAD", "kits/p"), SAYS + "\n      every vehicle; HEAD:kits/p/ours.loom:7");
        says(compareIn(folder.resolve("kits/p"), "v1.."), SAYS);
        assertTrue(compareIn(folder.resolve("kits/p"), "..v1").isFine().out().contains("length 190 mm -> 250 mm"));
    }

    @Test
    void theWorkTreeAndTheIndexStayAsTheyAre() throws IOException {
        git.write("kits/p/ours.loom", OURS.replace("250", "300"));
        byte[] index = Files.readAllBytes(folder.resolve(".git/index"));
        says(compare("v1..HEAD", "kits/p"), SAYS);
        assertTrue(Files.readString(folder.resolve("kits/p/ours.loom")).contains("300 mm"));
        assertArrayEquals(index, Files.readAllBytes(folder.resolve(".git/index")));
    }

    @Test
    void aBareRepositoryIsComparedToo() {
        git.run("clone", "-q", "--bare", ".", temporary.resolve("bare.git").toString());
        says(compareIn(temporary.resolve("bare.git"), "v1:kits/p", "main:kits/p"), SAYS);
        says(compareIn(temporary.resolve("bare.git"), "v1..main", "kits/p"), SAYS);
    }

    @Test
    void aShallowCopySaysWhatItLacks() {
        git.run("clone", "-q", "--depth", "1", "file://" + folder, temporary.resolve("shallow").toString());
        compareIn(temporary.resolve("shallow"), "v1", "kits/p")
                .isRefused("this copy holds the last commits only, fetch all of them");
        compareIn(temporary.resolve("shallow"), "HEAD", "kits/p").isFine();
    }

    @Test
    void aSubmoduleIsComparedWhereItsRevisionIsThere() throws IOException {
        Path other = Files.createDirectory(temporary.resolve("other"));
        Git whole = Git.init(other);
        whole.write("README", "x\n").commit("empty");
        whole.run("submodule", "--quiet", "add", folder.toString(), "cars");
        whole.commit("with a submodule");
        Call call = compareIn(other, "HEAD", "cars/kits/p");
        assertEquals(2, call.code(), call::toString);
        assertEquals(1, call.err().lines().count(), call::toString);
        assertTrue(call.err().contains("'cars' is a submodule in HEAD; call from within it"), call.err());
        says(compareIn(other.resolve("cars"), "v1", "kits/p"), SAYS);
    }

    @Test
    void aSideThatDoesNotParseIsComparedAsFarAsItGoes() {
        git.write("kits/p/ours.loom", SHORT.replace("covers front64", "covers ???"));
        Call call = compare("v1", "kits/p");
        says(call, SAYS);
        assertTrue(call.out().contains("not understood, and left out of this\n  kits/p/ours.loom:2:"), call.out());
        JsonObject json = JsonParser.parseString(compare("v1", "kits/p", "--format", "json").out()).getAsJsonObject();
        assertEquals(0, json.getAsJsonObject("old").get("problems").getAsInt());
        assertEquals(1, json.getAsJsonObject("new").get("problems").getAsInt());
    }

    @Test
    void aBinaryFileOnOneSideIsSaidAndTheRestCompared() throws IOException {
        Files.write(folder.resolve("kits/p/picture.loom"), new byte[] {0, 1, 2, 3, (byte) 0xff, 0, 0, 7});
        Call call = compare("v1", "kits/p");
        says(call, SAYS);
        assertTrue(call.out().contains("kits/p/picture.loom:1: "), call.out());
    }

    @Test
    void whatCannotBeFoundIsSaidInOneLine() {
        compare("v2", "kits/p").isRefused("no revision is called 'v2'; there is main, v1");
        compare("v1:kits/q", "kits/p").isRefused("no source 'kits/q' in v1");
        compare("v1:../x", "kits/p").isRefused("'../x' is outside of the repository");
        compare("v1").isRefused("two sides are needed");
        compare("v1..v3", "kits/p").isRefused("no revision is called 'v3'");
        compareIn(temporary, "v1", "cars").isRefused("there is no git repository here");
    }

    @Test
    void whatWasSoldIsReadFromGit() {
        git.write("kits/p/ours.loom", SHORT.replace("revision \"A\" of orrin {",
                "revision \"B\" of orrin {\n    sold revision \"A\" at \"v1\""));
        Call call = compare("--sold", "kits/p");
        says(call, "box revision A (v1): is sold and no longer compatible\n");
        says(call, "error[interface-changed] no longer fits front64 at lamp");
        assertTrue(compare("--sold", "kits/p", "--format", "json").out().contains("\"at\": \"v1\""));
        git.write("kits/p/ours.loom", OURS.replace("250 mm", "255 mm").replace("revision \"A\" of orrin {",
                "revision \"B\" of orrin {\n    sold revision \"A\" at \"v1\""));
        assertEquals("box revision A (v1): still fits and mates all that it did\n",
                compareIn(folder.resolve("kits"), "--sold", "p").isFine().out());
    }

    @Test
    void aSoldRevisionThatIsNowhereIsSaidInOneLine() {
        git.write("kits/p/ours.loom", OURS.replace("contains ours", "contains ours\n    sold revision \"0\""));
        compare("--sold", "kits/p").isRefused("kit box does not say where its sold revision \"0\" is kept");
        git.write("kits/p/ours.loom", OURS.replace("contains ours",
                "contains ours\n    sold revision \"0\" at \"v0\""));
        compare("--sold", "kits/p").isRefused("no revision is called 'v0'");
        git.write("kits/p/ours.loom", OURS);
        assertEquals("p: no kit lists a sold revision\n", compare("--sold", "kits/p").isFine().out());
        assertFalse(compare("--sold", "v1", "kits/p").out().isEmpty());
    }
}
