// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ConductorSizeTest {
    private static String refused(String size, SizeSystem system) {
        return ConductorSize.parse(size, system).problem().orElse("accepted");
    }

    @Test
    void aSizeCarriesItsSystem() {
        assertNotEquals(ConductorSize.awg("14"), ConductorSize.sae("14"));
        assertTrue(ConductorSize.sae("14").compareTo(ConductorSize.awg("14")) < 0);
        assertEquals("14 ga", ConductorSize.sae("14").written());
        assertEquals("1/0 awg", ConductorSize.awg("1/0").written());
        assertEquals("0.8 mm2", ConductorSize.metric("0.80").written());
        assertEquals(ConductorSize.metric("2.50"), ConductorSize.metric("2.5"));
        assertEquals(Optional.of(SizeSystem.SAE), SizeSystem.ofSymbol("ga"));
        assertEquals(Optional.empty(), SizeSystem.ofSymbol("gauge"));
    }

    @Test
    void sizesThatNoWireHasAreRefused() {
        assertEquals("there is no size 99 awg; AWG sizes are whole numbers from 40 down to 1, then 1/0 to 4/0",
                refused("99", SizeSystem.AWG));
        assertTrue(refused("3.7", SizeSystem.SAE).startsWith("there is no size 3.7 ga; SAE sizes are 22, 20, 18"));
        assertTrue(refused("3", SizeSystem.SAE).startsWith("there is no size 3 ga"));
        assertEquals("accepted", refused("3", SizeSystem.AWG));
        for (String wrong : new String[] {"0", "-1", "18.5", "5/0", "0/0", "", "018", "1e1"}) {
            assertNotEquals("accepted", refused(wrong, SizeSystem.AWG), wrong);
            assertNotEquals("accepted", refused(wrong, SizeSystem.SAE), wrong);
        }
        for (String wrong : new String[] {"0", "0.01", "401", "99999", "-1", "", ".8", "1/0", "1e1"}) {
            assertNotEquals("accepted", refused(wrong, SizeSystem.METRIC), wrong);
        }
        assertThrows(IllegalArgumentException.class, () -> ConductorSize.awg("99"));
    }

    @Test
    void theNextLargerAwgSize() {
        assertEquals(Optional.of(ConductorSize.awg("18")), ConductorSize.awg("18").nextLargerAwg());
        assertEquals(Optional.of(ConductorSize.awg("18")), ConductorSize.sae("18").nextLargerAwg());
        assertEquals(Optional.of(ConductorSize.awg("18")), ConductorSize.awg("22").nextLargerAwg());
        assertEquals(Optional.of(ConductorSize.awg("4")), ConductorSize.awg("5").nextLargerAwg());
        assertEquals(Optional.of(ConductorSize.awg("3")), ConductorSize.metric("25").nextLargerAwg());
        assertEquals(Optional.of(ConductorSize.awg("4/0")), ConductorSize.sae("4/0").nextLargerAwg());
        assertEquals(Optional.empty(), ConductorSize.metric("120").nextLargerAwg());
    }

    @Test
    void rowsRiseInArea() {
        List<ConductorSize> rows = ConductorSize.awgRows();
        assertEquals(15, rows.size());
        assertEquals(rows.stream().sorted().toList(), rows);
    }

    @Test
    void gaugeNumbersCountOnBelowOne() {
        assertEquals(Optional.of(18), ConductorSize.sae("18").gaugeNumber());
        assertEquals(Optional.of(0), ConductorSize.awg("1/0").gaugeNumber());
        assertEquals(Optional.of(-3), ConductorSize.awg("4/0").gaugeNumber());
        assertEquals(Optional.empty(), ConductorSize.metric("4").gaugeNumber());
    }

    @Test
    void figuresFromMemorySaySo() {
        assertTrue(ConductorSize.sae("22").fromMemory());
        assertTrue(ConductorSize.sae("20").basis().contains("from memory"));
        assertFalse(ConductorSize.sae("18").fromMemory());
        assertFalse(ConductorSize.awg("22").fromMemory());
    }

    @Test
    void resistanceFollowsTheMetalThatIsGiven() {
        Metal other = new Metal(0.02, 0.004, "a test");
        ConductorSize size = ConductorSize.metric("2");
        assertEquals(0.01, size.ohmPerMetre(20, other), 1e-15);
        assertEquals(0.01 * 1.24, size.ohmPerMetre(80, other), 1e-15);
        assertEquals(1 / 58.0 / 2, size.ohmPerMetre20(), 1e-15);
        assertThrows(IllegalArgumentException.class, () -> new Metal(0, 0.004, "nothing"));
        assertThrows(IllegalArgumentException.class, () -> new Metal(Double.NaN, 0.004, "nothing"));
    }
}
