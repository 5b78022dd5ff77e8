// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SpellingTest {

    private static final List<String> NAMES = List.of("saloon", "coupe", "estate", "headlampLeft", "headlampRight");

    @Test
    void aSlipOfTheHandIsForgiven() {
        assertEquals(Optional.of("coupe"), Spelling.nearest("coup", NAMES));
        assertEquals(Optional.of("saloon"), Spelling.nearest("slaoon", NAMES));
        assertEquals(Optional.of("headlampLeft"), Spelling.nearest("headlampleft", NAMES));
    }

    @Test
    void aStrangerIsNot() {
        assertEquals(Optional.empty(), Spelling.nearest("fan", NAMES));
    }

    @Test
    void betweenTwoThatAreEquallyNearNothingIsGuessed() {
        assertEquals(Optional.empty(), Spelling.nearest("headlamp1", List.of("headlamp2", "headlamp3")));
        assertEquals(Optional.empty(), Spelling.nearest("headlamp1", List.of("headlamp3", "headlamp2")));
    }

    @Test
    void aShortNameIsGuessedOnlyFromItsOwnLetters() {
        assertEquals(Optional.empty(), Spelling.nearest("J3", List.of("J1")));
        assertEquals(Optional.of("J1"), Spelling.nearest("j1", List.of("J1")));
        assertEquals(Optional.of("mm"), Spelling.nearest("mmm", List.of("mm")));
        assertEquals(Optional.of("in"), Spelling.nearest("ni", List.of("in")));
    }

    @Test
    void aSlipIsNeverTheNameOfSomethingElse() {
        for (String[] slip : new String[][] {{"halogn", "halogen"}, {"bulkhaed", "bulkhead"}, {"H1", "h1"},
            {"orin", "orrin"}, {"headLampl", "headLampL"}}) {
            assertTrue(Spelling.isSlip(slip[0], slip[1]), slip[0]);
        }
        for (String[] other : new String[][] {{"headLampR", "headLampL"}, {"J12", "J11"}, {"lampFL", "lampRL"},
            {"front64", "front46"}, {"headLamp", "headLampL"}, {"leftWing", "liftWyng"}, {"fan", "fun"},
            {"clip3", "clip13"}}) {
            assertFalse(Spelling.isSlip(other[0], other[1]), other[0]);
        }
    }

    @Test
    void aLetterOrNoneIsNeverGuessedAt() {
        assertEquals(Optional.empty(), Spelling.nearest("", NAMES));
        assertEquals(Optional.empty(), Spelling.nearest("x", List.of("y")));
    }
}
