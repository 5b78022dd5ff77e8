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
        assertEquals(List.of(Exit.FINE, Exit.FINE, Exit.FINE, Exit.FINE, Exit.FINE), Rehearsal.rehearse("rest",
                EXAMPLE));
        List<Integer> since = new ArrayList<>(Rehearsal.rehearse("since", EXAMPLE));
        assertEquals(Exit.BAD_CALL, since.removeLast(), "a copy that git does not have");
        int ofExample = since.remove(1);
        assertTrue(ofExample == Exit.FINE || ofExample == Exit.BAD_CALL, "without git there is no revision to look at");
        assertEquals(List.of(Exit.FINE, Exit.FINE), since);
    }
}
