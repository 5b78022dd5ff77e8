// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.app.OpenProject;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.change.Replay;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** The work of comparing a revision grows with the project, not with its square. */
class CompareGrowthTest {

    private static final double MOST_GROWTH = 1.2;

    private final SourceReader reader = LoomReader.create();

    private Comparison compared(int drawings, int wires) throws BadCall, IOException {
        List<Input> inputs = new LargeProject(drawings, wires).inputs();
        return new FactComparer().compare(project(inputs), project(Revised.of(inputs)));
    }

    private Project project(List<Input> inputs) throws BadCall {
        return new OpenProject(reader, 2).open(new ProjectPlace("large", Path.of(""), "", inputs), Cancel.NEVER,
                Progress.NONE).project();
    }

    @Test
    void tenTimesTheDrawingsAreTenTimesThePairs() throws BadCall, IOException {
        grows(compared(2, 90), compared(20 + 9, 90), (20 + 9 + 1) / 3.0);
    }

    @Test
    void tenTimesTheWiresAreTenTimesThePairs() throws BadCall, IOException {
        grows(compared(2, 60), compared(2, 600), 10);
    }

    private static void grows(Comparison small, Comparison large, double times) {
        long few = small.matching().compared();
        long many = large.matching().compared();
        assertTrue(many <= times * MOST_GROWTH * few, few + " pairs, then " + many);
        assertTrue(large.changes().stream().anyMatch(change -> change.kind() == Change.Kind.RENAMED));
        assertEquals(large.now().content(), Replay.apply(large.old(), large.changes()).content());
    }
}
