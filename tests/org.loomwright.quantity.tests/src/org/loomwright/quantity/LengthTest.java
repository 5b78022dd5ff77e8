// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class LengthTest {
    @Test
    void sumsAreExact() {
        Length sum = Length.ZERO;
        for (int i = 0; i < 64; i++) {
            sum = sum.plus(new Length(396_875));
        }
        assertEquals(Length.ofInches(1), sum);
        assertEquals(Length.ofInches(64), Length.ofInches(1).times(64));
        assertEquals(Length.ZERO, sum.minus(Length.ofInches(1)));
    }

    @Test
    void overflowIsNeverSilent() {
        Length most = new Length(Long.MAX_VALUE);
        assertThrows(ArithmeticException.class, () -> most.plus(new Length(1)));
        assertThrows(ArithmeticException.class, () -> most.times(2));
        assertThrows(ArithmeticException.class, () -> new Length(Long.MIN_VALUE).abs());
        assertThrows(ArithmeticException.class, () -> Length.ofMetres(1e10));
        assertThrows(ArithmeticException.class, () -> Length.ofMillimetres(Double.NaN));
    }

    @Test
    void doublesAreRoundedToNanometres() {
        assertEquals(12_700_000, Length.ofInches(0.5).nanometres());
        assertEquals(1, Length.ofMillimetres(1.4e-6).nanometres());
        assertEquals(0, Length.ofMillimetres(0.5e-6).nanometres());
        assertEquals(0.3175, Length.ofMillimetres(317.5).toMetres());
        assertEquals(317.5, Length.ofMetres(0.3175).toMillimetres());
    }

    @Test
    void showsInAnyUnitOfLength() {
        Length length = Length.of(new Quantity("12 1/2", Unit.IN));
        assertEquals("317.5 mm", length.show(Unit.MM, 1));
        assertEquals("12.50 in", length.show(Unit.IN, 2));
        assertEquals("1.0 ft", length.show(Unit.FT, 1));
        assertEquals("317.5 mm", length.toString());
        assertEquals("0 mm", Length.ZERO.toString());
        assertEquals("-0.000001 mm", new Length(-1).toString());
        assertEquals("0 mm", new Length(-1).show(Unit.MM, 0));
        assertThrows(IllegalArgumentException.class, () -> length.show(Unit.MM2, 1));
    }

    @Test
    void roundsUpToTheCuttingGrid() {
        Length grid = Length.ofMillimetres(5);
        assertEquals(Length.ofMillimetres(320), Length.ofMillimetres(317.5).roundedUpTo(grid));
        assertEquals(Length.ofMillimetres(320), Length.ofMillimetres(320).roundedUpTo(grid));
        assertEquals(Length.ofMillimetres(325), new Length(320_000_001).roundedUpTo(grid));
    }

    @Test
    void aChainOfDimensionsAddsItsTolerancesWorstCase() {
        Tolerance both = Tolerance.symmetric(Length.ofMillimetres(10));
        Tolerance longer = new Tolerance(Length.ZERO, Length.ofMillimetres(25));
        Tolerance chain = both.plus(longer);
        assertEquals(Length.ofMillimetres(10), chain.minus());
        assertEquals(Length.ofMillimetres(35), chain.plus());
        assertEquals(Length.ofMillimetres(290), chain.least(Length.ofMillimetres(300)));
        assertEquals(Length.ofMillimetres(335), chain.greatest(Length.ofMillimetres(300)));
        assertEquals(chain.plus(), chain.flipped().minus());
        assertTrue(Tolerance.NONE.isNone());
        assertFalse(chain.isNone());
        assertEquals("\u00b1 10 mm", both.toString());
        assertEquals("-0 mm / +25 mm", longer.toString());
        assertThrows(IllegalArgumentException.class, () -> Tolerance.symmetric(new Length(-1)));
    }

    @Test
    void aTableOfTolerancesRises() {
        CutTolerance.Band band = new CutTolerance.Band(Length.ofMetres(1), Tolerance.NONE);
        assertThrows(
                IllegalArgumentException.class,
                () -> new CutTolerance(List.of(band, band), 5, "twice the same"));
        assertThrows(IllegalArgumentException.class, () -> new CutTolerance(List.of(), 5, "empty"));
    }
}
