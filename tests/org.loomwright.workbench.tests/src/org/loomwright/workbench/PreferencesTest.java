// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.dialogs.PreferencesUtil;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Unit;
import org.loomwright.workbench.preference.Preferences;
import org.loomwright.workbench.text.Figures;

/** The pages of preferences and of how a project judges, and that what is chosen there counts. */
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

    /** A rule is given another weight by keyboard; the text of the practice says so, and it can be undone there. */
    @Test
    void howAProjectJudgesIsWrittenIntoItsPractice() throws Exception {
        IProject project = desk.orrin("judging");
        IFile file = project.getFile("practice.loom");
        ITextEditor editor = desk.open(file);
        StyledText text = desk.text(editor);
        String before = hand.ask(text::getText);
        Shell shell = properties(project);
        Table rules = hand.found("the rules", () -> Hand.control(shell, Table.class, each -> each.getItemCount() > 40));
        hand.tell(() -> {
            rules.setFocus();
            rules.setSelection(row(rules, "clamp-spacing"));
            rules.showSelection();
            rules.notifyListeners(SWT.Selection, new Event());
        });
        Combo weight = hand.found("the weights", () -> Hand.control(shell, Combo.class,
                each -> each.getItemCount() == 5 && each.getItem(0).startsWith("what the rule")));
        hand.tell(() -> {
            weight.setFocus();
            weight.select(weight.indexOf("note"));
            weight.notifyListeners(SWT.Selection, new Event());
        });
        Button apply = hand.found("the button that applies", () -> Hand.control(shell, Button.class,
                each -> each.getText().contains("Apply and")));
        hand.until("a weight without a reason is refused", () -> !apply.isEnabled());
        Text reason = hand.found("the reason", () -> Hand.control(shell, Text.class,
                each -> each.isEnabled() && each.getText().isEmpty() && each.getParent() == rules.getParent()));
        hand.tell(reason::setFocus);
        hand.type("our clips are the customer's");
        hand.until("one with a reason is taken", apply::isEnabled);
        hand.picture("judging");
        hand.click(apply);
        hand.until("the page is closed", shell::isDisposed);
        String line = "    treat clamp-spacing as note because \"our clips are the customer's\"\n";
        hand.until("the practice says so", () -> text.getText().contains(line));
        assertEquals(before, hand.ask(text::getText).replace(line, ""), "nothing else is touched");
        hand.front();
        hand.tell(text::setFocus);
        hand.press(SWT.CTRL, 'z');
        hand.until("it is undone", () -> text.getText().equals(before));
        hand.tell(() -> editor.close(false));
    }

    @Test
    void aProjectWithoutAPracticeGetsOne() throws Exception {
        IProject project = desk.empty("Judges");
        project.getFile("a.loom").create("platform p\n".getBytes(StandardCharsets.UTF_8), true, false, null);
        Shell shell = properties(project);
        Table rules = hand.found("the rules", () -> Hand.control(shell, Table.class, each -> each.getItemCount() > 40));
        Combo weight = hand.found("the weights", () -> Hand.control(shell, Combo.class,
                each -> each.getItemCount() > 3 && each.getItem(0).startsWith("what the rule")));
        Text reason = hand.found("the reason", () -> Hand.control(shell, Text.class,
                each -> each.getParent() == rules.getParent()));
        hand.tell(() -> {
            rules.setSelection(row(rules, "cavity-taken-twice"));
            rules.notifyListeners(SWT.Selection, new Event());
            assertEquals(-1, weight.indexOf("silent"), "an error is never silenced");
            weight.select(weight.indexOf("warning"));
            weight.notifyListeners(SWT.Selection, new Event());
            reason.setText("we look at each");
        });
        Button now = hand.found("the button that applies", () -> Hand.control(shell, Button.class,
                each -> each.getText().replace("&", "").equals("Apply")));
        hand.click(now);
        hand.until("it is written", () -> project.getFile("practice.loom").exists());
        hand.found("and known", () -> Hand.control(shell, Combo.class, each -> each.getText().startsWith(
                "practice, in practice.loom")));
        Button apply = hand.found("the button that applies and closes", () -> Hand.control(shell, Button.class,
                each -> each.getText().contains("Apply and")));
        hand.click(apply);
        hand.until("the page is closed", shell::isDisposed);
        assertEquals("practice practice {\n    treat cavity-taken-twice as warning because \"we look at each\"\n}\n",
                new String(project.getFile("practice.loom").getContents().readAllBytes(), StandardCharsets.UTF_8));
    }

    private Shell properties(IProject project) {
        desk.page();
        PlatformUI.getWorkbench().getDisplay().asyncExec(() -> PreferencesUtil.createPropertyDialogOn(null, project,
                "org.loomwright.workbench.judging", null, null).open());
        return hand.found("the properties", () -> hand.shell("Properties for"));
    }

    private static int row(Table rules, String id) {
        return Arrays.stream(rules.getItems()).map(each -> each.getText(0)).toList().indexOf(id);
    }
}
