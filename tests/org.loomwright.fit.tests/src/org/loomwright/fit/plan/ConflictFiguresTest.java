// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;

/** A conflict in figures, against a list of all stations and lengths. */
class ConflictFiguresTest {

    private static final int SEEDS = 3_000;
    private static final long FARTHEST = 400;

    @Test
    void figuresAreThoseOfAList() {
        int conflicts = 0;
        int differ = 0;
        int apart = 0;
        for (int seed = 0; seed < SEEDS; seed++) {
            PlanProblem any = Instances.tinyStiff(seed / 2);
            // every other one with little that may be dressed back
            PlanProblem problem = seed % 2 == 0 ? any : Parts.excessAtMost(any, 0, 22);
            Optional<Conflict> conflict = Conflict.of(problem, new HarnessPlanner(), Cancel.NEVER);
            if (conflict.isEmpty() || conflict.get().vehicles().size() < 2) {
                continue;
            }
            conflicts++;
            Optional<ConflictFigures.Differ> lengths = ConflictFigures.differ(conflict.get(), problem);
            Optional<ConflictFigures.Apart> stations = ConflictFigures.apart(conflict.get(), problem);
            if (lengths.isPresent()) {
                differ++;
                ConflictFigures.Differ each = lengths.get();
                assertTrue(each.lengths() - each.stations() > each.allowed(), "seed " + seed);
                assertEquals(0, served(problem, each.branch(), List.of(each.longer(), each.shorter())).length,
                        "seed " + seed);
            } else if (stations.isPresent()) {
                apart++;
                ConflictFigures.Apart each = stations.get();
                for (ConflictFigures.Window window : List.of(each.near(), each.far())) {
                    long[] all = served(problem, window.branch(), window.vehicles());
                    assertEquals(List.of(all[0], all[all.length - 1]), List.of(window.first(), window.last()),
                            "seed " + seed + " " + window);
                }
                assertTrue(each.far().last() - each.near().first() < each.least()
                        || each.far().first() - each.near().last() > each.most(), "seed " + seed + " " + each);
            }
        }
        assertTrue(differ > 10 && apart > 10 && differ + apart > conflicts / 3, differ + " differ, " + apart
                + " apart, of " + conflicts);
    }

    /** The stations from which some length of a branch serves some vehicles. */
    private static long[] served(PlanProblem problem, String name, List<Integer> vehicles) {
        PlanStop stop = problem.trunks().getFirst().stops().stream().filter(each -> each.branches().stream()
                .anyMatch(branch -> branch.name().equals(name))).findFirst().orElseThrow();
        PlanBranch branch = stop.branches().stream().filter(each -> each.name().equals(name)).findFirst().orElseThrow();
        return LongStream.rangeClosed(stop.first(), Math.min(stop.last(), FARTHEST))
                .filter(at -> at % problem.grid() == 0 || stop.first() == stop.last())
                .filter(at -> LongStream.rangeClosed(0, FARTHEST)
                        .filter(length -> branch.pinned().isPresent() ? length == branch.pinned().getAsLong()
                                : length % problem.grid() == 0 && length <= branch.longest())
                        .anyMatch(length -> branch.asks().stream().filter(ask -> vehicles.contains(ask.vehicle()))
                                .allMatch(ask -> serves(branch, ask, at, length))))
                .toArray();
    }

    private static boolean serves(PlanBranch branch, Ask ask, long at, long length) {
        long along = Math.abs(at - ask.station());
        long minus = branch.made().of(new Length(length)).minus().nanometres();
        long plus = branch.made().of(new Length(length)).plus().nanometres();
        return along <= branch.backLimit() && length - minus - along >= ask.reach()
                && length + plus - along - ask.spare() <= branch.excessLimit();
    }
}
