// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.dialogs.PreferencesUtil;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Unit;
import org.loomwright.workbench.preference.Preferences;
import org.loomwright.workbench.text.Figures;

/** The page of preferences, and that what is chosen there counts. */
class PreferencesTest {

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();

    @AfterEach
    void asItWas() {
        Preferences.node().remove(Preferences.UNIT);
        Preferences.node().remove(Preferences.PAUSE);
    }

    @Test
    void lengthsAreShownAsChosen() {
        desk.page();
        assertEquals("11.2 mm", Figures.written(Length.ofMillimetres(11.25)));
        PlatformUI.getWorkbench().getDisplay().asyncExec(() -> PreferencesUtil.createPreferenceDialogOn(null,
                "org.loomwright.workbench.preferences", null, null).open());
        Shell shell = hand.found("the preferences", () -> hand.shell("Preferences"));
        Button inches = hand.found("the choice of inches", () -> Hand.control(shell, Button.class,
                each -> each.getText().contains("Inches")));
        hand.click(inches);
        hand.until("inches are chosen", inches::getSelection);
        Text pause = hand.found("the pause", () -> Hand.control(shell, Text.class,
                each -> each.getText().equals("120")));
        Button apply = hand.found("the button that applies", () -> Hand.control(shell, Button.class,
                each -> each.getText().contains("Apply and")));
        hand.tell(pause::setFocus);
        hand.tell(pause::selectAll);
        hand.type("5");
        hand.until("a pause that is too short is refused", () -> !apply.isEnabled());
        hand.type("00");
        hand.until("one within the bounds is taken", apply::isEnabled);
        hand.picture("preferences");
        hand.click(apply);
        hand.until("the page is closed", shell::isDisposed);
        assertEquals(Unit.IN, Preferences.unit());
        assertEquals(500, Preferences.pause());
        assertEquals("0.44 in", Figures.written(Length.ofMillimetres(11.25)));
        assertEquals("-0.12 in", Figures.written(Length.ofMillimetres(-2.8)), "what is missing is not made less");
    }
}
