// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Map;
import java.util.List;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.loomwright.compare.FactComparer;
import org.loomwright.fit.ChainJudge;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;
import org.loomwright.workbench.guard.OffUi;
import org.loomwright.workbench.guard.OnUiThread;
import org.loomwright.workbench.truth.ProjectRoom;
import org.loomwright.workbench.truth.Truth;

/** Long work never begins on the thread that draws windows. */
class UiThreadTest {

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();

    @Test
    void theLoaderTheLinkerAndTheEnginesThrowOnTheThreadThatDraws() throws Exception {
        IProject project = desk.orrin("views");
        Truth truth = Desk.truth(project).orElseThrow();
        ProjectRoom room = Shared.rooms().room(project).orElseThrow();
        Project empty = Project.link(List.of());
        refused(() -> Shared.rooms().reader().read("a.loom", new byte[0]));
        refused(() -> room.take(Map.of(), new NullProgressMonitor()));
        refused(() -> truth.fit(Cancel.NEVER, Progress.NONE));
        refused(() -> truth.matrices(Cancel.NEVER));
        refused(() -> OffUi.judge(new ChainJudge()).judge(null, Cancel.NEVER));
        refused(() -> OffUi.rules(new BookRuleEngine(StandardRules.book())).check(empty, Settings.TIMELESS,
                Cancel.NEVER, Progress.NONE));
        refused(() -> OffUi.comparer(new FactComparer()).compare(empty, empty));
        refused(() -> OffUi.cancel(new NullProgressMonitor()));
    }

    @Test
    void elsewhereTheyWork() throws Exception {
        IProject project = desk.orrin("views");
        Truth truth = Desk.truth(project).orElseThrow();
        assertEquals(4, truth.fit(Cancel.NEVER, Progress.NONE).size());
        assertEquals("a.loom", Shared.rooms().reader().read("a.loom", new byte[0]).file());
    }

    private void refused(Executable work) {
        hand.tell(() -> assertThrows(OnUiThread.class, work));
    }
}
