// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** Least distance of breakouts: who asks for it, and which pairs are too close. Distances by hand. */
class BreakoutsTooCloseTest {

    private static final String TEXT = """
            platform orrin {
                option fog
                place bulkhead
            }
            harness front of orrin {
                spacingAtLeast 50 mm
                datum bulkhead
                trunk main {
                    breakout a at 100 mm
                    breakout b at 150 mm
                    breakout c at 199 mm when fog
                    breakout d at 199 mm when not fog
                    breakout e after b at 60 mm when fog
                }
            }
            """;

    private static List<String> found(String text) throws BadCall {
        return StandardRules.engine().check(TextProject.open(text).project(), Settings.TIMELESS, Cancel.NEVER,
                Progress.NONE).of("breakouts-too-close").stream().map(each -> each.sentence() + "; "
                        + each.affected().orElseThrow().words()).toList();
    }

    @Test
    void eachPairThatSomeVehicleHasIsHeldAgainstTheDistance() throws BadCall {
        assertEquals(List.of("breakouts b and c lie 49 mm apart on main, less than 50 mm; fog",
                "breakouts b and d lie 49 mm apart on main, less than 50 mm; not fog",
                "breakouts c and e lie 11 mm apart on main, less than 50 mm; fog"), found(TEXT));
    }

    @Test
    void whereNobodyAsksNothingIsFound() throws BadCall {
        assertEquals(List.of(), found(TEXT.replace("    spacingAtLeast 50 mm\n", "")));
        assertEquals(List.of(), found(TEXT.replace("harness front", "drawing front")
                .replace("    spacingAtLeast 50 mm\n", "")
                + "practice p {\n    limit spacingAtLeast 50 mm source \"x\"\n}\n"));
    }

    @Test
    void thePracticeAsksForAllHarnesses() throws BadCall {
        assertEquals(1, found(TEXT.replace("    spacingAtLeast 50 mm\n", "")
                + "practice p {\n    limit spacingAtLeast 20 mm source \"x\"\n}\n").size());
    }
}
