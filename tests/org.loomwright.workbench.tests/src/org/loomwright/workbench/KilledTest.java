// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A workbench that is killed: the next one has the project, what was typed, and what is wrong with the files. */
class KilledTest {

    @TempDir
    private Path folder;

    @Test
    void theNextStartHasTheProjectAndFindsWhatWasWrittenMeanwhile() throws Exception {
        Path workspace = folder.resolve("workspace");
        try (OtherWorkbench first = OtherWorkbench.start(Session.WORK, workspace, folder, "first")) {
            first.ready();
        }
        Files.writeString(workspace.resolve(Session.PROJECT).resolve("outside.loom"),
                "drawing outside of orin {\n}\n");
        List<String> told;
        try (OtherWorkbench second = OtherWorkbench.start(Session.LOOK, workspace, folder, "second")) {
            told = second.ready();
        }
        assertEquals(List.of("project true", "typed text true", "saved mistake true", "outside mistake true"),
                told.stream().filter(each -> each.matches("(project|typed|saved|outside) .*")).toList());
    }
}
