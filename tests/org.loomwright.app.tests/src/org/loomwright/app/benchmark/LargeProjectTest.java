// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.benchmark;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.app.JudgeFit;
import org.loomwright.app.OpenProject;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitReport;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Report;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** What the benchmark measures is a project without a mistake, and the work for it does not run away. */
class LargeProjectTest {

    private final SourceReader reader = LoomReader.create();

    private Project project(int drawings, int wires) throws BadCall {
        ProjectPlace place = new ProjectPlace("large", Path.of(""), "", new LargeProject(drawings, wires).inputs());
        return new OpenProject(reader, 2).open(place, Cancel.NEVER, Progress.NONE).project();
    }

    private static Report check(Project project) {
        return StandardRules.engine().check(project, Settings.TIMELESS, Cancel.NEVER, Progress.NONE);
    }

    private static FitReport fit(Project project) {
        return new JudgeFit(new ChainJudge(), FitDefaults.usual()).judge(project, Cancel.NEVER, Progress.NONE)
                .getFirst().report();
    }

    @Test
    void nothingIsWrongWithIt() throws BadCall {
        Project project = project(4, 36);
        assertEquals(List.of(), project.problems());
        assertEquals(List.of(), check(project).findings());
        assertEquals(FitReport.Verdict.FITS, fit(project).verdict());
        assertEquals(4 * 36, project.drawings().stream().mapToInt(view -> view.wires().size()).sum());
    }

    @Test
    void theSameNumbersGiveTheSameBytes() throws IOException {
        List<Input> once = new LargeProject(3, 30).inputs();
        List<Input> again = new LargeProject(3, 30).inputs();
        for (int i = 0; i < once.size(); i++) {
            assertArrayEquals(once.get(i).content().open().readAllBytes(),
                    again.get(i).content().open().readAllBytes());
        }
    }

    @Test
    void tenTimesTheDrawingsAreAboutTenTimesTheWork() throws BadCall {
        Project few = project(5, 36);
        Project many = project(50, 36);
        Report.Work small = check(few).work();
        Report.Work large = check(many).work();
        assertTrue(large.checks() <= 10 * 1.2 * small.checks(), small + " and " + large);
        assertTrue(large.targets() <= 10 * 1.2 * small.targets(), small + " and " + large);
        assertTrue(conditions(many) <= 10 * 1.2 * conditions(few), "operations on conditions");
        assertTrue(fit(many).work().evaluations() <= 11 * fit(few).work().evaluations(), "the fit");
    }

    /** Operations on conditions that a check takes and that were not answered from memory. */
    private static long conditions(Project project) {
        long before = project.platforms().get("orrin").vehicles().work().operations();
        check(project);
        return project.platforms().get("orrin").vehicles().work().operations() - before;
    }

    @Test
    void tenTimesTheWiresAreAboutTenTimesTheWork() throws BadCall {
        Report.Work small = check(project(2, 36)).work();
        Report.Work large = check(project(2, 360)).work();
        assertTrue(large.checks() <= 11 * small.checks(), small + " and " + large);
    }
}
