// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;
import org.loomwright.condition.Condition;
import org.loomwright.electric.Example;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Schematic;
import org.loomwright.quantity.Cancel;

/** Vehicles that are looked at block by block against vehicles that are solved whole. */
class BlockSurveyTest {

    @Test
    void enclosesWhatWholeVehiclesShow() throws BadCall {
        for (Schematic schematic : Schematic.of(Example.of("orrin"))) {
            if (schematic.fitment().platform().name().equals("orrin900")) {
                encloses(schematic);
            }
        }
    }

    @Test
    void enclosesWhatWholeVehiclesOfMadePlatformsShow(@TempDir Path folder) throws BadCall, IOException {
        int exact = 0;
        int told = 0;
        for (int seed = 0; seed < 12; seed++) {
            Survey blocks = encloses(OptionsPlatform.of(folder, seed, 5, 3, 3, 3));
            told += blocks.found().size();
            exact += (int) blocks.found().stream().filter(Survey.Found::exact).count();
        }
        assertTrue(told > 20 && exact > told / 3, exact + " of " + told + " are exact");
    }

    @Test
    void growsWithBlocksAndNotWithVehicles(@TempDir Path folder) throws BadCall, IOException {
        Schematic few = OptionsPlatform.of(folder, 3, 8, 4, 4, 3);
        Schematic many = OptionsPlatform.of(folder, 4, 80, 40, 4, 3);
        List<Mode> modes = List.of(few.mode("all").orElseThrow());
        BlockSurvey one = BlockSurvey.of(few, modes, Inspectors.all(), Survey.MOST, 2, 0, Cancel.NEVER);
        BlockSurvey ten = BlockSurvey.of(many, List.of(many.mode("all").orElseThrow()), Inspectors.all(), Survey.MOST,
                2, Cancel.NEVER);
        assertTrue(many.fitment().domain().count().bitLength() > 80);
        assertTrue(ten.survey().bounded().isEmpty());
        assertTrue(ten.survey().assignments() < 15 * one.survey().assignments(), ten.survey().assignments()
                + " assignments after " + one.survey().assignments());
        assertTrue(ten.survey().solves() < 40 * ten.survey().assignments(), ten.survey().solves() + " networks");
    }

    /** What fits into a budget is found as without one, and what does not is named and not solved. */
    @Test
    void keepsABudgetOfAssignments(@TempDir Path folder) throws BadCall, IOException {
        Schematic schematic = OptionsPlatform.of(folder, 5, 6, 3, 4, 2);
        List<Mode> modes = schematic.modes();
        Survey all = BlockSurvey.within(schematic, modes, Inspectors.all(), Survey.MOST, Cancel.NEVER).survey();
        assertTrue(all.bounded().isEmpty() && all.assignments() > 100, all.assignments() + " assignments");
        int budget = (int) all.assignments() / 2;
        Survey some = BlockSurvey.within(schematic, modes, Inspectors.all(), budget, Cancel.NEVER).survey();
        assertTrue(some.assignments() <= budget && some.assignments() > 0, some.assignments() + " assignments");
        List<Mode> solved = new ArrayList<>(modes);
        solved.removeAll(some.bounded());
        assertTrue(!some.bounded().isEmpty() && !solved.isEmpty(), some.bounded().toString());
        assertEquals(words(BlockSurvey.of(schematic, solved, Inspectors.all(), Survey.MOST, 1, Cancel.NEVER)),
                words(BlockSurvey.within(schematic, modes, Inspectors.all(), budget, Cancel.NEVER)));
        assertTrue(some.solves() < all.solves());
    }

    @Test
    void isTheSameWithAnyNumberOfThreads(@TempDir Path folder) throws BadCall, IOException {
        Schematic schematic = OptionsPlatform.of(folder, 5, 6, 3, 4, 2);
        List<String> one = words(BlockSurvey.of(schematic, schematic.modes(), Inspectors.all(), Survey.MOST, 1, 0,
                Cancel.NEVER));
        assertTrue(!one.isEmpty());
        assertEquals(one, words(BlockSurvey.of(schematic, schematic.modes(), Inspectors.all(), Survey.MOST, 3, 0,
                Cancel.NEVER)));
    }

    /** Bounds are found before anything is looked for, so that what holds is looked at once. */
    @Test
    void solvesAnAssignmentFewTimes(@TempDir Path folder) throws BadCall, IOException {
        Schematic schematic = OptionsPlatform.of(folder, 5, 6, 3, 4, 2);
        List<Mode> written = schematic.modes().stream().filter(Mode::written).toList();
        Survey survey = BlockSurvey.of(schematic, written, Inspectors.all(), Survey.MOST, 1, 0, Cancel.NEVER).survey();
        assertTrue(survey.solves() < 20 * survey.assignments(), survey.solves() + " networks for "
                + survey.assignments() + " assignments");
    }

    /** Two modes that are equally bad but for rounding: the first in their order is told. */
    @Test
    void theFirstOfEquallyBadModesIsTold(@TempDir Path folder) throws BadCall, IOException {
        Schematic schematic = OptionsPlatform.of(folder, 5, 6, 3, 4, 2);
        Condition all = schematic.fitment().domain();
        List<Mode> modes = schematic.modes();
        Survey.Found first = new Survey.Found(fault(schematic, 1.25), modes.get(0), all, all);
        assertEquals(modes.get(0), first.and(new Survey.Found(fault(schematic, 1.25 * (1 + 1e-9)), modes.get(1), all,
                all)).mode());
        assertEquals(modes.get(1), first.and(new Survey.Found(fault(schematic, 1.25 * (1 + 1e-3)), modes.get(1), all,
                all)).mode());
    }

    private static Fault fault(Schematic schematic, double weight) {
        return new Fault("wire-overloaded", schematic.pieces().getFirst(), weight, "words", List.of(), "advice");
    }

    private static List<String> words(BlockSurvey survey) {
        return survey.survey().found().stream().map(each -> each.fault().key() + each.mode().name()
                + each.when().words() + each.sure().words() + each.fault().words() + each.fault().steps()).toList();
    }

    private static Survey encloses(Schematic schematic) {
        Survey whole = Survey.of(schematic, schematic.modes(), Inspectors.all(), Survey.MOST, Cancel.NEVER);
        BlockSurvey blocks = BlockSurvey.of(schematic, schematic.modes(), Inspectors.all(), Survey.MOST, 2, 0,
                Cancel.NEVER);
        assertTrue(whole.bounded().isEmpty());
        assertTrue(blocks.survey().bounded().isEmpty(), blocks.survey().bounded().toString());
        Map<String, Condition> may = new TreeMap<>();
        Map<String, Condition> sure = new TreeMap<>();
        blocks.survey().found().forEach(each -> {
            may.merge(each.fault().key(), each.when(), Condition::or);
            sure.merge(each.fault().key(), each.sure(), Condition::or);
        });
        Map<String, Condition> seen = new TreeMap<>();
        whole.found().forEach(each -> seen.merge(each.fault().key(), each.when(), Condition::or));
        seen.forEach((key, when) -> assertTrue(may.containsKey(key) && when.implies(may.get(key)), () -> key + ": "
                + when + " not in " + may.get(key)));
        sure.forEach((key, when) -> assertTrue(when.isNever() || seen.containsKey(key)
                && when.implies(seen.get(key)), () -> key + ": sure for " + when + ", seen for " + seen.get(key)));
        return blocks.survey();
    }
}
