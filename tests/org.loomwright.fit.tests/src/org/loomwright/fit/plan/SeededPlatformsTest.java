// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.NoSuchAlgorithmException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.quantity.Cancel;

class SeededPlatformsTest {

    private static List<String> committed() throws IOException {
        try (InputStream in = SeededPlatformsTest.class.getResourceAsStream("seeded-platforms.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines()
                    .filter(line -> !line.startsWith("#")).toList();
        }
    }

    /** What was measured can be measured again. */
    @Test
    void everyPlatformIsStillTheSame() throws IOException, NoSuchAlgorithmException {
        List<String> lines = committed();
        assertEquals(SeededPlatforms.COUNT, lines.size());
        for (int seed = 0; seed < lines.size(); seed++) {
            assertEquals(lines.get(seed), seed + " " + SeededPlatforms.digest(SeededPlatforms.stiff(seed)) + " "
                    + SeededPlatforms.digest(SeededPlatforms.withSlack(seed)));
        }
    }

    /** The hardest of the platforms with slack are proved at all levels, within so many programs. */
    @Test
    void theHardestPlatformsAreProved() {
        for (int seed : List.of(1, 10, 16)) {
            HarnessPlan plan = new HarnessPlanner().plan(SeededPlatforms.withSlack(seed), Cancel.NEVER);
            assertTrue(plan.settled() && plan.found().orElseThrow().isBest(), "seed " + seed);
            assertTrue(plan.work().programs() <= 12_000, "seed " + seed + ": " + plan.work());
        }
    }

    /** With slack, tucks are eliminated: ten times the vehicles ask for hardly more programs and nodes. */
    @Test
    void tenTimesTheVehiclesAreHardlyMorePrograms() {
        for (int seed = 0; seed < 4; seed++) {
            HarnessPlan few = new HarnessPlanner().plan(SeededPlatforms.of(seed, 20, 12, true), Cancel.NEVER);
            HarnessPlan crowd = new HarnessPlanner().plan(SeededPlatforms.of(seed, 200, 12, true), Cancel.NEVER);
            assertTrue(few.settled() && crowd.settled());
            assertTrue(crowd.work().programs() <= 5 * few.work().programs() + 200, few.work() + ", " + crowd.work());
            assertTrue(crowd.work().nodes() <= 5 * few.work().nodes() + 200, few.work() + ", " + crowd.work());
        }
    }

    /** The work for a stiff trunk grows with its breakouts, and hardly with the vehicles. */
    @Test
    void tenTimesTheBreakoutsAreTenTimesTheWork() {
        HarnessPlan few = new RigidPlanner().plan(SeededPlatforms.of(3, 20, 6, false), Cancel.NEVER);
        HarnessPlan many = new RigidPlanner().plan(SeededPlatforms.of(3, 20, 60, false), Cancel.NEVER);
        HarnessPlan crowd = new RigidPlanner().plan(SeededPlatforms.of(3, 200, 6, false), Cancel.NEVER);
        long each = few.work().positions() / few.work().passes();
        assertTrue(many.work().positions() / many.work().passes() <= 12 * each);
        assertTrue(crowd.work().positions() / crowd.work().passes() <= 2 * each);
        assertTrue(many.work().passes() <= 40 && crowd.work().passes() <= 40);
    }
}
