// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fuzz;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.loomwright.app.Repository;

/** A short run of {@link MutationFuzz}; the long one is started by hand. */
class MutationFuzzTest {

    private static final int ROUNDS = 60;

    @ParameterizedTest
    @ValueSource(strings = {"orrin", "trailer"})
    void nothingBreaksButTheText(String example) throws IOException {
        MutationFuzz fuzz = new MutationFuzz(Repository.root().resolve("docs/examples").resolve(example));
        List<MutationFuzz.Round> rounds = LongStream.range(0, ROUNDS).mapToObj(fuzz::round).toList();
        assertEquals(List.of(), rounds.stream().filter(round -> !round.faults().isEmpty()).toList());
        assertTrue(rounds.stream().mapToInt(MutationFuzz.Round::findings).distinct().count() > 5,
                "the damage is felt in different ways");
    }

    @Test
    void theSameSeedDoesTheSameDamage() {
        byte[] text = "wire a 18 ga from J1:7 to S4\nsplice S4 at radiator\n".getBytes(StandardCharsets.UTF_8);
        for (long seed = 0; seed < 50; seed++) {
            assertArrayEquals(new Mutations(seed).damage(text), new Mutations(seed).damage(text));
        }
        assertTrue(LongStream.range(0, 50).mapToObj(seed -> new String(new Mutations(seed).damage(text),
                StandardCharsets.UTF_8)).distinct().count() > 40);
    }
}
