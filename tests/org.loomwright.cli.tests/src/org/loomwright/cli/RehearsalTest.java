// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the start-up cache is made from does what it is meant to do: a call that fails early loads next to nothing. */
class RehearsalTest {

    private static final Path EXAMPLE = Path.of(System.getProperty("loomwright.root"), "docs/examples/orrin");

    @Test
    void checksAndTheServerRunToTheirEnd() throws IOException {
        assertEquals(List.of(Exit.FINE, Exit.FINE, Exit.FINE), Rehearsal.rehearse("check", EXAMPLE));
        assertEquals(List.of(Exit.FINE), Rehearsal.rehearse("serve", EXAMPLE));
    }

    @Test
    void theRestRunsToItsEnd() throws IOException {
        List<Integer> others = new ArrayList<>(Rehearsal.rehearse("rest", EXAMPLE));
        int since = others.remove(1);
        assertTrue(since == Exit.FINE || since == Exit.BAD_CALL, "without git there is no revision to look at");
        assertEquals(List.of(Exit.FINE, Exit.FINE, Exit.FINE, Exit.FINE, Exit.FINE), others);
    }
}
