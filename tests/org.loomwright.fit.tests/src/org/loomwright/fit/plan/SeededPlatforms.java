// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import org.loomwright.harness.Ours.Objective;

/**
 * Twenty invented platforms of 50 drawings with 30 places on one trunk, and others of their kind in any size. Stations
 * and lengths in tenths of a millimetre. A drawing differs from the one before it as the years of a car do: mostly not
 * at all, here and there by a few centimetres, and every place by some millimetres.
 */
final class SeededPlatforms {

    static final int COUNT = 20;
    static final int DRAWINGS = 50;
    static final int PLACES = 30;

    private static final long MM = 1_000_000;
    private static final long TENTH = MM / 10;
    private static final long FREE = 1_000_000 * MM;

    private SeededPlatforms() {
    }

    static PlanProblem stiff(int seed) {
        return of(seed, DRAWINGS, PLACES, false);
    }

    /** The same vehicles, where 10 to 40 mm may be taken up in a fold in one stretch of ten. */
    static PlanProblem withSlack(int seed) {
        return of(seed, DRAWINGS, PLACES, true);
    }

    static PlanProblem of(int seed, int drawings, int places, boolean slack) {
        Random random = new Random(0x10041L + seed);
        List<PlanStop> stops = new ArrayList<>();
        long station = 150 * MM;
        for (int k = 0; k < places; k++) {
            station += (60 + random.nextInt(90)) * MM;
            long need = (120 + random.nextInt(380)) * MM;
            long shift = 0;
            long longer = 0;
            List<Ask> asks = new ArrayList<>();
            for (int v = 0; v < drawings; v++) {
                if (random.nextInt(12) == 0) {
                    shift = (random.nextInt(61) - 30) * MM;
                    longer = (random.nextInt(61) - 30) * MM;
                }
                if (v == k % drawings || random.nextInt(10) > 0) {
                    long at = station + shift + (random.nextInt(81) - 40) * TENTH;
                    long length = need + longer + (random.nextInt(81) - 40) * TENTH;
                    long allowance = (100 + random.nextInt(80)) * TENTH;
                    asks.add(new Ask(v, at, length + allowance, length - allowance));
                }
            }
            long fold = k % 10 == 4 ? (10 + 10L * random.nextInt(4)) * MM : 0;
            stops.add(new PlanStop("t" + k, 0, FREE, Math.max(25 * MM, fold), FREE, slack ? fold : 0,
                    1_000 + 9_000L * (places - k), List.of(new PlanBranch("b" + k, Instances.constant(0, 25 * MM),
                            OptionalLong.empty(), 250 * MM, 150 * MM, FREE, 1_000 + 9_000L * (1 + random.nextInt(4)),
                            asks.size(), asks,
                            List.of()))));
        }
        return new PlanProblem(List.of(new PlanTrunk("main", stops)), drawings, 5 * MM,
                List.of(Objective.EXCESS, Objective.COPPER, Objective.LENGTH));
    }

    /** A digest of every figure of a problem without branches on branches. */
    static String digest(PlanProblem problem) throws NoSuchAlgorithmException {
        StringBuilder text = new StringBuilder().append(problem.grid()).append(' ').append(problem.order());
        for (PlanStop stop : problem.trunks().getFirst().stops()) {
            text.append('\n').append(stop.name()).append(' ').append(stop.leastGap()).append(' ').append(stop.slack())
                    .append(' ').append(stop.weight());
            for (PlanBranch branch : stop.branches()) {
                text.append('\n').append(branch.name()).append(' ').append(branch.excessLimit()).append(' ')
                        .append(branch.backLimit()).append(' ').append(branch.weight()).append(' ')
                        .append(branch.count());
                branch.asks().forEach(ask -> text.append('\n').append(ask.vehicle()).append(' ').append(ask.station())
                        .append(' ').append(ask.reach()).append(' ').append(ask.spare()));
            }
        }
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256")
                .digest(text.toString().getBytes(StandardCharsets.UTF_8)));
    }
}
