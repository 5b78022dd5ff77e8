// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Part;
import org.loomwright.rules.WrittenBench;

/** What is stated of cavities, against the wires in them. */
class CavityRulesTest {

    private static WrittenBench bench() {
        return new WrittenBench().upgrade("fan").zone("bay", true).zone("cabin", false).place("grille", "bay")
                .place("facia", "cabin").part(Part.Kind.PLUG, "blank").part(Part.Kind.TERMINAL, "tab")
                .part(Part.Kind.SEAL, "grey").part(Part.Kind.HOUSING, "way3", "pins 1 2 3");
    }

    private static WrittenBench harness(String... facts) {
        return bench().harness("front", connector(facts));
    }

    /** Cavity 1 is always wired, cavity 2 with a fan, cavity 3 never. */
    private static Consumer<WrittenBench.Wires> connector(String... facts) {
        return wires -> wires.connector("J1", facts).connector("J2", "is way3")
                .circuit("12", "", cut -> cut.wire("a", "from J1:1", "to J2:1"))
                .circuit("13", "", cut -> cut.wire("a", "from J2:2", "to J1:2", "when fan"));
    }

    @Test
    void aPlugWhereSomeVehicleHasAWire() {
        assertEquals(List.of("error front:J1: plug blank closes cavity J1:2, which holds wire 13a when fan"),
                harness("is way3", "plug 2 is blank").check("plug-in-wired-cavity"));
        assertEquals(List.of("error front:J1: plug blank closes cavity J1:1, which holds wire 12a when"
                + " year >= 1970 and fan"),
                harness("is way3", "plug 1 is blank when fan and year >= 1970").check("plug-in-wired-cavity"));
    }

    @Test
    void aPlugWhereNoVehicleHasAWire() {
        assertEquals(List.of(), harness("is way3", "plug 2 is blank when not fan", "plug 3 is blank")
                .check("plug-in-wired-cavity"));
    }

    @Test
    void aPlugCountsOnDrawingsToo() {
        assertEquals(false, bench().drawing("front", "", connector("is way3", "plug 2 is blank"))
                .findings("plug-in-wired-cavity").getFirst().inherited());
    }

    @Test
    void aWiredCavityWithoutTerminal() {
        assertEquals(List.of("warning front:J1: cavity J1:2 holds a wire, and no terminal is stated for it when"
                + " fan"), harness("is way3", "terminal 1 is tab").check("cavity-without-terminal"));
        assertEquals(List.of("warning front:J1: cavity J1:1 holds a wire, and no terminal is stated for it when"
                + " year >= 1968"), harness("is way3", "terminal 1 is tab when year < 1968", "terminal 2 is tab")
                .check("cavity-without-terminal"));
    }

    @Test
    void terminalsForAllOrForNone() {
        assertEquals(List.of(), harness("is way3", "terminal 1 is tab", "terminal 2 is tab when fan")
                .check("cavity-without-terminal"));
        assertEquals(List.of(), harness("is way3").check("cavity-without-terminal"));
        assertEquals(List.of(), bench().drawing("front", "", connector("is way3", "terminal 1 is tab"))
                .check("cavity-without-terminal"));
    }

    @Test
    void aSealedConnectorInTheWetIsClosed() {
        assertEquals(List.of(), harness("is way3", "at grille", "seal 1 is grey", "seal 2 is grey when fan",
                "plug 2 is blank when not fan", "plug 3 is blank").check("unsealed-in-wet-zone"));
    }

    @Test
    void anOpenCavityInTheWet() {
        assertEquals(List.of(
                "warning front:J1: cavity 2 of J1 holds a wire without seal, beside others that are sealed when fan",
                "warning front:J1: cavity 2 of J1 is empty and has no plug, beside others that are sealed when not fan",
                "warning front:J1: cavity 3 of J1 is empty and has no plug, beside others that are sealed when"
                        + " year >= 1970"), harness("is way3", "at grille", "seal 1 is grey",
                                "plug 3 is blank when year < 1970").check("unsealed-in-wet-zone"));
    }

    @Test
    void inTheDryOrWithoutAnySealNothingIsAsked() {
        assertEquals(List.of(), harness("is way3", "at facia", "seal 1 is grey").check("unsealed-in-wet-zone"));
        assertEquals(List.of(), harness("is way3", "at grille", "plug 3 is blank").check("unsealed-in-wet-zone"));
        assertEquals(List.of(), harness("is way3", "seal 1 is grey").check("unsealed-in-wet-zone"));
    }

    @Test
    void sealsOfSomeVehiclesMakeItSealedInThemOnly() {
        assertEquals(List.of("warning front:J1: cavity 2 of J1 holds a wire without seal, beside others that are sealed"
                + " when year >= 1970 and fan"), harness("is way3", "at grille", "seal 1 is grey when year >= 1970",
                        "plug 2 is blank when not fan", "plug 3 is blank").check("unsealed-in-wet-zone"));
    }
}
