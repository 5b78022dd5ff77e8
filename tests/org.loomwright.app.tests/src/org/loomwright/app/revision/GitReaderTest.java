// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.revision;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectFiles;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.testing.Git;

/** What is read of revisions that the real git wrote. */
class GitReaderTest {

    @TempDir
    private Path temporary;

    private Path folder;
    private Git git;
    private final GitReader reader = new GitReader();

    @BeforeEach
    void repository() throws IOException {
        folder = Files.createDirectory(temporary.resolve("work"));
        git = Git.init(folder);
        git.write("cars/orrin/front.loom", "one\n").write("cars/orrin/sub/rear.loom", "rear\n")
                .write("cars/orrin/.hidden/x.loom", "x\n").write("cars/orrin/notes.txt", "no source\n")
                .commit("first");
        git.run("tag", "-a", "v1", "-m", "a tag with a message");
        git.write("cars/orrin/front.loom", "two\n").commit("second");
        git.write("cars/orrin/front.loom", "changed, not committed\n");
    }

    private ProjectPlace read(String revision, String path) throws BadCall {
        return reader.read(folder, revision, path, false);
    }

    private static String texts(ProjectPlace place) {
        TreeMap<String, String> texts = new TreeMap<>();
        for (Input input : place.inputs()) {
            texts.put(input.name(), text(input));
        }
        return texts.toString();
    }

    private static String text(Input input) {
        try (InputStream stream = input.content().open()) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8).strip();
        } catch (IOException e) {
            return "unreadable: " + e.getMessage();
        }
    }

    private String refused(String revision, String path) {
        return assertThrows(BadCall.class, () -> read(revision, path)).getMessage();
    }

    @Test
    void aFolderIsReadAsItWas() throws BadCall {
        ProjectPlace place = read("v1", "cars/orrin");
        assertEquals("{front.loom=one, sub/rear.loom=rear}", texts(place));
        assertEquals("orrin", place.name());
        assertEquals("v1:cars/orrin/", place.prefix());
        assertEquals("{front.loom=two, sub/rear.loom=rear}", texts(read("HEAD", "cars/orrin")));
        assertEquals("{front.loom=one, sub/rear.loom=rear}", texts(read("main~1", "cars/orrin/")));
    }

    @Test
    void aFileIsReadAsItWas() throws BadCall {
        ProjectPlace place = read("v1", "cars/orrin/front.loom");
        assertEquals("{front.loom=one}", texts(place));
        assertEquals("front", place.name());
        assertEquals("v1:cars/orrin/", place.prefix());
    }

    @Test
    void filesComeInTheOrderOfTheWorkTree() throws BadCall {
        git.write("p/a.loom", "").write("p/a/z.loom", "").write("p/a-b/y.loom", "").write("p/B.loom", "").commit("p");
        assertEquals(ProjectFiles.below(folder.resolve("p")).stream().map(Input::name).toList(),
                read("HEAD", "p").inputs().stream().map(Input::name).toList());
    }

    @Test
    void aPathStartsWhereTheCallerIsOrAtTheTop() throws BadCall {
        Path cars = folder.resolve("cars");
        assertEquals("{front.loom=one, sub/rear.loom=rear}", texts(reader.read(cars, "v1", "orrin", false)));
        assertEquals("{front.loom=one, sub/rear.loom=rear}", texts(reader.read(cars, "v1", "cars/orrin", true)));
        assertEquals("no source 'orrin' in v1; did you mean './orrin'?",
                assertThrows(BadCall.class, () -> reader.read(cars, "v1", "orrin", true)).getMessage());
    }

    @Test
    void whatWasDeletedSinceIsStillThere() throws Exception {
        git.run("rm", "-q", "-r", "-f", "cars");
        git.commit("gone");
        assertEquals("{front.loom=one, sub/rear.loom=rear}", texts(read("v1", "cars/orrin")));
        assertEquals("no source 'cars/orrin' in HEAD", refused("HEAD", "cars/orrin"));
    }

    @Test
    void theWorkTreeAndItsIndexStayAsTheyAre() throws Exception {
        String before = git.run("status", "--porcelain=v2", "--branch");
        byte[] index = Files.readAllBytes(folder.resolve(".git/index"));
        read("v1", "cars/orrin");
        assertArrayEquals(index, Files.readAllBytes(folder.resolve(".git/index")));
        assertEquals(before, git.run("status", "--porcelain=v2", "--branch"));
    }

    @Test
    void anUnknownRevisionIsAnsweredWithTheNearest() {
        git.run("tag", "v2.1");
        git.run("branch", "season1967");
        assertEquals("no revision is called 'v2.2'; did you mean 'v2.1'?", refused("v2.2", "."));
        assertEquals("no revision is called 'seson1967'; did you mean 'season1967'?", refused("seson1967", "."));
        assertTrue(refused("zzzzzzzzzzz", ".").startsWith("no revision is called 'zzzzzzzzzzz'; there is main, "),
                refused("zzzzzzzzzzz", "."));
        assertEquals("'v1^{x' is not the name of a revision", refused("v1^{x", "."));
        assertTrue(refused("HEAD:cars", ".").contains("HEAD:cars"), refused("HEAD:cars", "."));
    }

    @Test
    void aFolderWithoutSourcesIsRefused() {
        git.write("empty/readme.txt", "x").commit("x");
        assertEquals("no source 'empty' in HEAD", refused("HEAD", "empty"));
        assertTrue(refused("HEAD", "../elsewhere").endsWith("is outside of the repository"));
    }

    @Test
    void aRepositoryWithoutCommitsSaysSo() throws IOException {
        Path fresh = Files.createDirectory(temporary.resolve("fresh"));
        Git.init(fresh);
        assertEquals("the repository has no commit yet",
                assertThrows(BadCall.class, () -> reader.read(fresh, "HEAD", ".", false)).getMessage());
    }

    @Test
    void aFolderOutsideOfAnyRepositoryIsRefused() {
        assertTrue(assertThrows(BadCall.class, () -> reader.read(temporary, "HEAD", ".", false)).getMessage()
                .startsWith("there is no git repository here: "));
    }

    @Test
    void aRepositoryWithoutAWorkTreeIsRead() throws BadCall {
        git.run("clone", "-q", "--bare", ".", "../bare.git");
        ProjectPlace place = reader.read(temporary.resolve("bare.git"), "v1", "cars/orrin", false);
        assertEquals("{front.loom=one, sub/rear.loom=rear}", texts(place));
        assertEquals("bare", reader.read(temporary.resolve("bare.git"), "v1", ".", false).name());
    }

    @Test
    void aSecondWorkTreeIsReadLikeTheFirst() throws BadCall {
        git.run("worktree", "add", "-q", "../second", "v1");
        Path second = temporary.resolve("second");
        assertEquals("{front.loom=one, sub/rear.loom=rear}", texts(reader.read(second, "HEAD", "cars/orrin", false)));
        assertEquals("{front.loom=two, sub/rear.loom=rear}", texts(reader.read(second, "main", "cars/orrin", false)));
        assertEquals("{front.loom=two, sub/rear.loom=rear}",
                texts(reader.read(second.resolve("cars"), "main", "orrin", false)));
    }

    @Test
    void packedObjectsAndPackedNamesAreRead() throws BadCall {
        git.run("gc", "-q", "--aggressive", "--prune=now");
        git.run("pack-refs", "--all");
        assertEquals("{front.loom=one, sub/rear.loom=rear}", texts(read("v1", "cars/orrin")));
    }

    @Test
    void aShallowCopySaysWhyItLacksARevision() throws BadCall {
        git.run("clone", "-q", "--depth", "1", "--no-tags", "file://" + folder, "../shallow");
        assertEquals("{front.loom=two, sub/rear.loom=rear}",
                texts(reader.read(temporary.resolve("shallow"), "HEAD", "cars/orrin", false)));
        assertTrue(assertThrows(BadCall.class, () -> reader.read(temporary.resolve("shallow"), "HEAD~1", ".", false))
                .getMessage().endsWith("; this copy holds the last commits only, fetch all of them"));
    }

    @Test
    void linksAreFollowedWithinTheRevision() throws Exception {
        Path orrin = folder.resolve("cars/orrin");
        Files.createSymbolicLink(orrin.resolve("again.loom"), Path.of("sub/rear.loom"));
        Files.createSymbolicLink(orrin.resolve("chain.loom"), Path.of("../../stock/list.loom"));
        Files.createSymbolicLink(orrin.resolve("loop"), Path.of("."));
        Files.createSymbolicLink(orrin.resolve("outside.loom"), Path.of("../../../elsewhere.loom"));
        Files.createSymbolicLink(orrin.resolve("round.loom"), Path.of("round.loom"));
        git.write("stock/list.loom", "list\n").commit("links");
        ProjectPlace place = read("HEAD", "cars/orrin");
        assertEquals("{again.loom=rear, chain.loom=list, front.loom=changed, not committed, outside.loom=unreadable:"
                + " it is a link to something outside of the revision, round.loom=unreadable: it is a link to"
                + " something outside of the revision}", texts(place));
        assertEquals(ProjectFiles.below(orrin).stream().map(Input::name).toList(),
                place.inputs().stream().map(Input::name).toList());
    }

    @Test
    void aSubmoduleIsReadWhereItIsThere() throws Exception {
        Path lib = Files.createDirectory(temporary.resolve("lib"));
        Git.init(lib).write("cable.loom", "cable\n").commit("cables");
        git.run("submodule", "--quiet", "add", "../lib", "cars/orrin/stock");
        git.commit("with a submodule");
        new Git(folder.resolve("cars/orrin/stock")).write("cable.loom", "newer\n").commit("newer, not asked for");
        assertTrue(texts(read("HEAD", "cars/orrin")).contains("stock/cable.loom=cable"),
                texts(read("HEAD", "cars/orrin")));
        git.run("clone", "-q", ".", "../without");
        String texts = texts(reader.read(temporary.resolve("without"), "HEAD", "cars/orrin", false));
        assertTrue(texts.contains("stock=unreadable: it is a submodule whose revision is not here"), texts);
    }

    @Test
    void aPointerToALargeFileIsFollowedOrExplained() throws Exception {
        String id = "4d7a214614ab2935c943f9e0ff69d22eadbb8f32b1258daaa5e2ca24d17e2393";
        git.write("cars/orrin/big.loom", "version https://git-lfs" + ".example/spec/v1\noid sha256:" + id
                + "\nsize 4\n").commit("pointer");
        assertTrue(texts(read("HEAD", "cars/orrin")).contains("big.loom=unreadable: git holds a pointer"),
                texts(read("HEAD", "cars/orrin")));
        Path store = Files.createDirectories(folder.resolve(".git/lfs/objects/4d/7a"));
        Files.writeString(store.resolve(id), "big\n");
        assertTrue(texts(read("HEAD", "cars/orrin")).contains("big.loom=big"));
    }

    @Test
    void lineEndsOfTheWorkTreeAreNoneOfTheRevision() throws Exception {
        git.write(".gitattributes", "*.loom text eol=crlf\n").write("cars/orrin/front.loom", "a\r\nb\r\n")
                .commit("with carriage returns");
        assertTrue(texts(read("HEAD", "cars/orrin")).contains("front.loom=a\nb,"));
    }

    @Test
    void aHugeBlobIsNotTakenIntoMemory() throws Exception {
        Files.write(folder.resolve("cars/orrin/huge.loom"), new byte[9 << 20]);
        git.commit("huge");
        Input huge = read("HEAD", "cars/orrin").inputs().stream().filter(each -> each.name().equals("huge.loom"))
                .findFirst().orElseThrow();
        assertEquals(9 << 20, huge.size());
        assertEquals("", text(huge));
    }

    @Test
    void sidesAreFilesFoldersAndRevisions() throws BadCall {
        assertEquals("{front.loom=one, sub/rear.loom=rear} {front.loom=changed, not committed, sub/rear.loom=rear}",
                sides("v1", "cars/orrin"));
        assertEquals("{front.loom=one, sub/rear.loom=rear} {front.loom=two, sub/rear.loom=rear}",
                sides("v1:cars/orrin", "HEAD:cars/orrin"));
        assertEquals("{front.loom=one, sub/rear.loom=rear} {front.loom=two, sub/rear.loom=rear}",
                sides("v1..main", "cars/orrin"));
        assertEquals("{front.loom=one, sub/rear.loom=rear} {front.loom=two, sub/rear.loom=rear}",
                sides("v1..", "cars/orrin"));
        assertEquals("{cars/orrin/front.loom=one, cars/orrin/sub/rear.loom=rear}"
                + " {cars/orrin/front.loom=two, cars/orrin/sub/rear.loom=rear}", sides("v1..main"));
        assertEquals("{cars/orrin/front.loom=changed, not committed} {front.loom=one}",
                sides("cars/orrin/front.loom", "v1:./cars/orrin/front.loom"));
    }

    private String sides(String... arguments) throws BadCall {
        Sides sides = Sides.find(folder, List.of(arguments), GitReader::new);
        return texts(sides.old()) + " " + texts(sides.changed());
    }

    @Test
    void sidesThatCannotBeFoundAreAnswered() {
        assertTrue(wrong("v1").startsWith("two sides are needed"));
        assertTrue(wrong("v1..main", "cars", "x").startsWith("two sides are needed"));
        assertEquals("'carz/orrin' is no file and no folder, and as a revision: no revision is called 'carz/orrin';"
                + " there is main, v1", wrong("carz/orrin", "cars/orrin"));
        assertEquals("no revision is called 'v3'; there is main, v1", wrong("v1..v3", "cars"));
    }

    private String wrong(String... arguments) {
        return assertThrows(BadCall.class, () -> sides(arguments)).getMessage();
    }

    @Test
    void aFileNamedLikeARevisionIsTheFile() throws Exception {
        Files.createDirectory(folder.resolve("v1"));
        Files.writeString(folder.resolve("v1/x.loom"), "x");
        assertEquals("{x.loom=x} {front.loom=changed, not committed, sub/rear.loom=rear}", sides("v1", "cars/orrin"));
        Sides sides = Sides.find(folder, List.of("v1", "cars/orrin"), () -> {
            throw new AssertionError("no revision was asked for");
        });
        assertEquals("v1", sides.old().name());
    }
}
