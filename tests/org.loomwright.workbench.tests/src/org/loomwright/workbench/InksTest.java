// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.eclipse.swt.graphics.RGB;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.loomwright.workbench.text.Inks;

/** Source: Web Content Accessibility Guidelines 2.2, success criterion 1.4.3: 4.5 to 1 for text. */
class InksTest {

    private static final double LEAST = 4.5;

    /** The grounds of texts: that of the platform's light theme, and of its dark one. */
    private static final RGB LIGHT = new RGB(255, 255, 255);
    private static final RGB DARK = new RGB(47, 47, 47);

    @Test
    @Tag("outside")
    void eachCanBeReadOnALightAndOnADarkGround() {
        for (Inks ink : Inks.values()) {
            assertTrue(Inks.contrast(ink.on(false), LIGHT) >= LEAST, ink + " on light");
            assertTrue(Inks.contrast(ink.on(true), DARK) >= LEAST, ink + " on dark");
        }
    }

    /** The figures that the guidelines give: 21 to 1 for black on white; #767676 is the palest grey that will do. */
    @Test
    @Tag("outside")
    void contrastIsThatOfTheGuidelines() {
        assertEquals(21, Inks.contrast(new RGB(0, 0, 0), LIGHT), 1e-9);
        assertTrue(Inks.contrast(new RGB(0x76, 0x76, 0x76), LIGHT) >= LEAST);
        assertTrue(Inks.contrast(new RGB(0x77, 0x77, 0x77), LIGHT) < LEAST);
    }
}
