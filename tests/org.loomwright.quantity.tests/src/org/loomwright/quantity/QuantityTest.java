// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class QuantityTest {
    private static Quantity read(String number, Unit unit) {
        return Quantity.parse(number, unit).optional().orElseThrow();
    }

    private static String refused(String number) {
        return Quantity.parse(number, Unit.MM).problem().orElse("accepted");
    }

    @Test
    void keepsWhatItsAuthorWrote() {
        assertEquals("7 1/2 in", read("7 1/2", Unit.IN).written());
        assertEquals("7 1/2 in", read(" 7   1 / 2 ", Unit.IN).written());
        assertEquals("5/8 in", read("5/8", Unit.IN).written());
        assertEquals("12.50 in", read("12.50", Unit.IN).written());
        assertEquals("0.8 mm2", read(".8", Unit.MM2).written());
        assertEquals("12 mm", read("0012", Unit.MM).written());
        assertEquals("-40 C", read("-40", Unit.C).written());
        assertEquals("-7 1/2 mm", read("-7 1/2", Unit.MM).written());
        assertEquals("5 %", read("5", Unit.PERCENT).written());
        assertEquals("0 mm", read("-0", Unit.MM).written());
    }

    @Test
    void writtenTextReadsBackAsTheSameQuantity() {
        Random random = new Random(7);
        for (int i = 0; i < 2_000; i++) {
            String number = switch (random.nextInt(3)) {
                case 0 -> Integer.toString(random.nextInt(2_000_000) - 1_000_000);
                case 1 -> random.nextInt(10_000) + "." + String.format(Locale.ROOT, "%03d", random.nextInt(1_000));
                default -> random.nextInt(50) + " " + (1 + random.nextInt(63)) + "/64";
            };
            Quantity quantity = read(number, Unit.IN);
            assertEquals(quantity, read(quantity.number(), Unit.IN));
            assertTrue(quantity.sameValue(read(number, Unit.IN)));
        }
    }

    @Test
    void inchesAreExactInNanometres() {
        assertEquals(396_875, read("1/64", Unit.IN).nanometres());
        assertEquals(190_500_000, read("7 1/2", Unit.IN).nanometres());
        assertEquals(1_085_850_000, read("42.75", Unit.IN).nanometres());
        assertEquals(304_800_000, read("1", Unit.FT).nanometres());
        assertEquals(-25_400_000, read("-1", Unit.IN).nanometres());
        assertEquals(1, read("0.000001", Unit.MM).nanometres());
        for (int i = 1; i <= 64; i++) {
            assertEquals(i * 396_875L, read(i + "/64", Unit.IN).nanometres());
        }
    }

    @Test
    void partsOfNanometresAreRoundedHalfEven() {
        assertEquals(0, read("0.0000005", Unit.MM).nanometres());
        assertEquals(2, read("0.0000015", Unit.MM).nanometres());
        assertEquals(2, read("0.0000025", Unit.MM).nanometres());
        assertEquals(333_333, read("1/3", Unit.MM).nanometres());
        assertEquals(-666_667, read("-2/3", Unit.MM).nanometres());
    }

    @Test
    void onlyLengthsHaveNanometres() {
        assertThrows(IllegalStateException.class, () -> read("1", Unit.A).nanometres());
    }

    @Test
    void siValues() {
        assertEquals(0.1905, read("7 1/2", Unit.IN).si());
        assertEquals(0.8e-6, read("0.8", Unit.MM2).si());
        assertEquals(0.015, read("15", Unit.MOHM).si());
        assertEquals(1_200.0, read("1.2", Unit.KW).si());
        assertEquals(21_600.0, read("6", Unit.H).si());
        assertEquals(0.1, read("10", Unit.PERCENT).si());
        assertEquals(1.0 / 3, read("1/3", Unit.M).si());
    }

    /** By convention of the project, temperatures stay in degrees Celsius. */
    @Test
    void celsiusStaysCelsius() {
        assertEquals(80.0, read("80", Unit.C).si());
        assertEquals(-40.0, read("-40", Unit.C).si());
    }

    @Test
    void showsInOtherUnitsRoundedOnceFromTheExactValue() {
        assertEquals("190.5 mm", read("7 1/2", Unit.IN).show(Unit.MM, 1));
        assertEquals("12.50 in", read("317.5", Unit.MM).show(Unit.IN, 2));
        assertEquals("0.63 in", read("5/8", Unit.IN).show(Unit.IN, 2));
        assertEquals("0.13 A", read("125", Unit.MA).show(Unit.A, 2));
        assertEquals("0 mm", read("-1/3", Unit.MM).show(Unit.MM, 0));
        assertEquals("1000 mA", read("1", Unit.A).show(Unit.MA, 0));
        assertThrows(IllegalArgumentException.class, () -> read("1", Unit.A).show(Unit.V, 1));
    }

    @Test
    void formattingIgnoresTheLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("de-DE"));
            assertEquals("12.5 mm", read("12.5", Unit.MM).show(Unit.MM, 1));
            assertEquals("12.5 mm", Length.ofMillimetres(12.5).toString());
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            assertEquals("12.5 mm", Length.ofMillimetres(12.5).show(Unit.MM, 1));
            assertEquals("SAE least cross-section, 1,537 circular mils", ConductorSize.sae("18").basis());
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void equalityIsBySpellingSameValueByMeasure() {
        assertEquals(read("12.5", Unit.IN), read("012.5", Unit.IN));
        assertNotEquals(read("12.5", Unit.IN), read("12.50", Unit.IN));
        assertTrue(read("12.5", Unit.IN).sameValue(read("12.50", Unit.IN)));
        assertTrue(read("12 1/2", Unit.IN).sameValue(read("317.5", Unit.MM)));
        assertTrue(read("1", Unit.FT).sameValue(read("12", Unit.IN)));
        assertFalse(read("1", Unit.FT).sameValue(read("12.000001", Unit.IN)));
        assertFalse(read("1", Unit.A).sameValue(read("1", Unit.V)));
        assertTrue(read("1/3", Unit.M).sameValue(read("2/6", Unit.M)));
    }

    @Test
    void whatIsNoNumberIsRefusedWithAMessage() {
        assertEquals("'1/0' divides by zero", refused("1/0"));
        assertEquals("'3 5/00' divides by zero", refused("3 5/00"));
        assertEquals("1000000000 is out of range; numbers stay below 1,000,000,000", refused("1000000000"));
        assertEquals("accepted", refused("999999999"));
        assertEquals("accepted", refused("999999999.999999"));
        assertEquals("'1234567890.123456' has more than 15 digits", refused("1234567890.123456"));
        assertEquals("'0.1234567890123456' has more than 15 digits", refused("0.1234567890123456"));
        for (String wrong : new String[] {"", "-", ".", "5.", "1,5", "1e3", "+4", "4-1/2", "1/", "/2", "1.5/2",
            "twelve", "1 2", "--1", "1/2/3", "\u0661", "NaN", "1_000"}) {
            assertTrue(refused(wrong).contains("is no number; write it like"), wrong + ": " + refused(wrong));
        }
        String endless = "9".repeat(100_000);
        assertTrue(refused(endless).length() < 100);
        assertTrue(refused(endless + "/0").length() < 100);
    }

    @Test
    void codeCannotMakeAQuantityThatAPersonCouldNotWrite() {
        assertThrows(IllegalArgumentException.class, () -> new Quantity("1/0", Unit.MM));
        assertEquals("0.00012 m", Quantity.of(new BigDecimal("1.2E-4"), Unit.M).written());
    }

    @Test
    void unitsByTheirSymbol() {
        for (Unit unit : Unit.values()) {
            assertEquals(Optional.of(unit), Unit.ofSymbol(unit.symbol()));
        }
        assertEquals(Optional.empty(), Unit.ofSymbol("MM"));
        assertEquals(Optional.of(Unit.MA), Unit.ofSymbol("mA"));
        assertEquals(Optional.empty(), Unit.ofSymbol("ga"));
    }

    @Test
    void theUnitThatWasMeant() {
        String[][] meant = {
            {"im", "in"}, {"mn", "mm"}, {"MM", "mm"}, {"inch", "in"}, {"inches", "in"}, {"\"", "in"}, {"amps", "A"},
            {"a", "A"}, {"volts", "V"}, {"mm\u00b2", "mm2"}, {"mm3", "mm2"}, {"\u03a9", "ohm"}, {"ohms", "ohm"},
            {"ohn", "ohm"}, {"mohn", "mohm"}, {"\u00b0C", "C"}, {"feet", "ft"}, {"milimetres", "mm"}, {"fr", "ft"},
            {"ni", "in"}, {"percent", "%"}, {"cn", "cm"}};
        for (String[] pair : meant) {
            assertEquals(Optional.of(pair[1]), Unit.nearest(pair[0]).map(Unit::symbol), pair[0]);
        }
        for (String nothing : new String[] {"", "x", "banana", "qqq", "z".repeat(1_000)}) {
            assertEquals(Optional.empty(), Unit.nearest(nothing), nothing);
        }
    }

    @Test
    void factorsAreWithinOneDimension() {
        assertEquals(0, Unit.IN.factor().multiply(BigDecimal.valueOf(12)).compareTo(Unit.FT.factor()));
        assertEquals(0, Unit.MIN.factor().multiply(BigDecimal.valueOf(60)).compareTo(Unit.H.factor()));
    }
}
