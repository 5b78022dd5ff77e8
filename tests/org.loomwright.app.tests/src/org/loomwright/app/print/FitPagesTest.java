// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.app.JudgeFit;
import org.loomwright.app.JudgeFit.Judged;
import org.loomwright.app.TextProject;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.quantity.Cancel;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Report;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

class FitPagesTest {

    private static List<Judged> judge(String text) throws BadCall {
        return new JudgeFit(new ChainJudge(), FitDefaults.usual()).judge(TextProject.open(text).project(), Cancel.NEVER,
                Progress.NONE);
    }

    private static String text(String source) throws BadCall {
        Project project = TextProject.open(source).project();
        Report report = StandardRules.engine().check(project, Settings.TIMELESS, Cancel.NEVER, Progress.NONE);
        return FitPages.text(project, judge(source), report, Palette.PLAIN, 120);
    }

    @Test
    void aFailureThatSomebodyAcceptedIsNoFailure() throws BadCall {
        String tight = TextProject.SMALL.replace("branch b1 from wing to lamp 250 mm",
                "branch b1 from wing to lamp 210 mm");
        assertTrue(text(tight).startsWith("ours does not fit: "), text(tight));
        String waived = tight + "waive place-not-reached on ours:b1 because \"stretched on the bench\"\n";
        assertTrue(text(waived).startsWith("ours fits but for what is accepted: "), text(waived));
    }

    /**
     * Margins by hand: c - tm - |t - s| - K - a with a = 5 + 2 + 2 mm and tm = 0.
     * Lamp 1966: 250 - 0 - 0 - 200 - 9 = 41; 1967: 250 - 0 - 10 - 215 - 9 = 16; fog 1967: 330 - 0 - 10 - 300 - 9 = 11.
     * The longest excess is the fog lamp's or the lamp's of 1966: 250 + 25 - 0 - 200 + 9 = 84; 330 + 50 - 10 - 300 + 9
     * = 79.
     */
    @Test
    void theMatrixHasTheMarginsAndWhatBindsThem() throws BadCall {
        assertEquals("""
                ours fits the drawings as transcribed: 4 lengths from sheets, 1 from samples

                margin in mm  front66  front67  least  bound by
                lamp (b1)        41.0   16.0     16.0   front67
                fog (b2)       capped   11.0 c   11.0   front67

                front66  Front 1966, year = 1966
                front67  Front 1967, year = 1967
                margin: what is left of the shortest branch that may be made, all tolerances against it
                c capped in some of the vehicles
                largest excess 84.0 mm: lamp in front66, 250 mm allowed

                """, text(TextProject.SMALL));
    }

    @Test
    void aTableThatIsTooWideGoesOnBelow() throws BadCall {
        String table = FitMatrix.of(judge(TextProject.SMALL).getFirst(), Palette.PLAIN, 32);
        assertTrue(table.startsWith("""
                margin in mm  front66  front67
                lamp (b1)        41.0   16.0
                fog (b2)       capped   11.0 c

                margin in mm  least  bound by
                lamp (b1)      16.0   front67
                """), table);
    }

    @Test
    void whatFailsIsMarkedAndExplained() throws BadCall {
        List<Judged> judged = judge(TextProject.SMALL.replace("lamp 250 mm", "lamp 230 mm")
                .replace("fog 330 mm", "fog 700 mm"));
        String table = FitMatrix.of(judged.getFirst(), Palette.PLAIN, 120);
        assertTrue(table.startsWith("""
                margin in mm    front66  front67  least  bound by
                lamp (b1)     21.0       -4.0 S!   -4.0   front67
                fog (b2)           P! c       P!  381.0   front67
                """), table);
        assertTrue(table.endsWith("\nP! too long to park, S! too short, c capped in some of the vehicles\n"), table);
    }

    @Test
    void aHarnessThatCoversNothingHasNothingToFit() throws BadCall {
        Judged judged = judge(TextProject.SMALL.replace("covers front66, front67", "note \"free\"")).getFirst();
        assertEquals("ours covers no drawing, so there is none that it must fit\n\n",
                text(TextProject.SMALL.replace("covers front66, front67", "note \"free\"")));
        assertTrue(judged.weight().isEmpty());
    }

    @Test
    void aVerdictOnHalfASourceSaysSo() throws BadCall {
        String half = TextProject.SMALL.replace("to fog 330 mm", "to fgo 330 mm");
        assertTrue(text(half).startsWith(FitPages.HALF_READ + "\n"));
        String shapeless = """
                platform p {
                    years 1966 .. 1967
                }
                drawing d of p {
                }
                harness h of p {
                    covers d
                }
                """;
        assertEquals("h has no branch, and its drawings have none: there is nothing to fit",
                text(shapeless).lines().findFirst().orElseThrow());
    }
}
