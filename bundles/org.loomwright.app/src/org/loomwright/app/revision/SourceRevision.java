// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.revision;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.Repository;
import org.eclipse.jgit.storage.file.FileRepositoryBuilder;
import org.loomwright.app.BadCall;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.harness.Source;

/** Says which revision of git the sources of a project are, for print. Changes nothing. */
public final class SourceRevision {

    private static final int SHORT = 10;

    private SourceRevision() {
    }

    /**
     * {@code git f3ab8c5d01}; {@code git f3ab8c5d01 with changes} where what was read is not what that revision holds;
     * {@code not under version control}.
     *
     * @param read the sources as they were read
     */
    public static String of(ProjectPlace place, Iterable<Source> read) {
        try {
            FileRepositoryBuilder builder = new FileRepositoryBuilder()
                    .findGitDir(place.root().toAbsolutePath().normalize().toFile());
            if (builder.getGitDir() == null) {
                return "not under version control";
            }
            try (Repository repository = builder.setMustExist(true).build()) {
                ObjectId head = repository.resolve("HEAD^{commit}");
                if (head == null) {
                    return "git, nothing committed yet";
                }
                return "git " + head.name().substring(0, SHORT)
                        + (isHead(place.root(), head.name(), read) ? "" : " with changes");
            }
        } catch (IOException | BadCall | RuntimeException e) {
            return "git, revision not readable";
        }
    }

    private static boolean isHead(Path root, String head, Iterable<Source> read) throws BadCall, IOException {
        Optional<ProjectPlace> kept = new GitReader().find(root, head, ".", false);
        if (kept.isEmpty()) {
            return false;
        }
        Map<String, String> texts = new TreeMap<>();
        for (Input input : kept.get().inputs()) {
            try (InputStream in = input.content().open()) {
                texts.put(input.name(), plain(new String(in.readAllBytes(), StandardCharsets.UTF_8)));
            }
        }
        for (Source source : read) {
            if (!plain(source.text()).equals(texts.remove(source.file()))) {
                return false;
            }
        }
        return true;
    }

    /** Line ends and a byte order mark are no change. */
    private static String plain(String text) {
        return text.replace("\r\n", "\n").replace("\ufeff", "");
    }
}
