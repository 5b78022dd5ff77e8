// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.load;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.harness.Source;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

class ProjectFilesTest {

    @TempDir
    private Path folder;

    private void file(String name) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, name);
    }

    private List<String> names() {
        return ProjectFiles.below(folder).stream().map(Input::name).toList();
    }

    private List<Source> loaded(List<Input> inputs) {
        SourceReader asText = (name, bytes) ->
                new Source(name, new String(bytes, StandardCharsets.UTF_8), List.of(), List.of());
        return new Loader(asText, 1).load(inputs, Cancel.NEVER, Progress.NONE).sources();
    }

    @Test
    void takesSourcesOfAllFoldersInOrderAndNothingElse() throws IOException {
        file("z.loom");
        file("b/2.loom");
        file("b/10.loom");
        file("a.loom");
        file("a.loom.orig");
        file("notes.txt");
        file(".hidden.loom");
        file(".git/x.loom");
        file("b/deep/er/c.loom");
        assertEquals(List.of("a.loom", "b/10.loom", "b/2.loom", "b/deep/er/c.loom", "z.loom"), names());
    }

    @Test
    void aFolderNamedLikeASourceIsAFolder() throws IOException {
        file("x.loom/y.loom");
        assertEquals(List.of("x.loom/y.loom"), names());
    }

    @Test
    void aLinkToAFolderAboveEndsNowhere() throws IOException {
        file("a/b/c.loom");
        Files.createSymbolicLink(folder.resolve("a/b/up"), folder);
        Files.createSymbolicLink(folder.resolve("a/self"), folder.resolve("a"));
        assertEquals(List.of("a/b/c.loom"), names());
    }

    @Test
    void aLinkedFolderIsFollowedAndASharedFileIsTakenOnce(@TempDir Path elsewhere) throws IOException {
        Files.writeString(elsewhere.resolve("parts.loom"), "shared");
        Files.createSymbolicLink(folder.resolve("shared"), elsewhere);
        Files.createSymbolicLink(folder.resolve("shared2"), elsewhere);
        Files.createSymbolicLink(folder.resolve("z.loom"), elsewhere.resolve("parts.loom"));
        assertEquals(List.of("shared/parts.loom"), names());
    }

    @Test
    void aLinkToNothingIsAProblemOfThatFile() throws IOException {
        Files.createSymbolicLink(folder.resolve("gone.loom"), folder.resolve("nowhere"));
        Source source = loaded(ProjectFiles.below(folder)).getFirst();
        assertEquals(Loader.UNREADABLE, source.problems().getFirst().code());
        assertEquals("the file cannot be read: it is a link to something that does not exist",
                source.problems().getFirst().message());
    }

    @Test
    void singleFilesKeepTheNamesTheyWereGivenAndComeOnce() throws IOException {
        file("a/x.loom");
        file("y.txt");
        List<Input> inputs = ProjectFiles.of(folder,
                List.of(Path.of("y.txt"), Path.of("a/../a/x.loom"), folder.resolve("y.txt")));
        assertEquals(List.of("y.txt", "a/x.loom"), inputs.stream().map(Input::name).toList());
        assertEquals("a/x.loom", loaded(inputs).get(1).text());
    }
}
