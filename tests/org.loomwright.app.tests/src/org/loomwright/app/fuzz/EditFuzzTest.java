// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.app.Repository;

/** A short run of {@link EditFuzz}; the long one is started by hand. */
class EditFuzzTest {

    private static final int EDITS = 15;

    @ParameterizedTest
    @CsvSource({"orrin, 1, 1", "orrin, 2, 2", "trailer, 3, 8"})
    void theReportIsThatOfAFullCheck(String example, long seed, int threads) throws IOException {
        EditFuzz fuzz = new EditFuzz(Repository.root().resolve("docs/examples").resolve(example));
        assertEquals(List.of(), fuzz.run(seed, EDITS, threads));
    }
}
