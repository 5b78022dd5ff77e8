// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Field;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;
import org.eclipse.core.resources.IProject;
import org.eclipse.e4.ui.model.application.ui.basic.MPart;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.wizard.Wizard;
import org.eclipse.jface.wizard.WizardDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.Accessible;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.accessibility.AccessibleListener;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Spinner;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.IViewPart;
import org.eclipse.ui.IWorkbenchWizard;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.dialogs.PreferencesUtil;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.views.IViewDescriptor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.loomwright.workbench.importing.ImportWizard;
import org.loomwright.workbench.project.NewDrawingWizard;
import org.loomwright.workbench.project.NewProjectWizard;

/**
 * Whatever can be used in our views and dialogs has a name that a screen reader can say, and what is drawn by us takes
 * the keys.
 */
class AccessTest {

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();
    private final TreeSet<String> wrong = new TreeSet<>();
    private int seen;

    @AfterEach
    void close() {
        desk.closeAll();
        hand.tell(() -> desk.page().resetPerspective());
    }

    @Test
    void everythingInTheViewsHasAName() throws Exception {
        IProject project = desk.orrin("views");
        desk.open(project.getFile("front-harness.loom"));
        List<String> views = hand.ask(() -> Arrays.stream(PlatformUI.getWorkbench().getViewRegistry().getViews())
                .map(IViewDescriptor::getId).filter(each -> each.startsWith(Shared.ID + ".view.")).toList());
        for (String each : views) {
            IViewPart view = desk.view(each.substring((Shared.ID + ".view.").length()));
            hand.settle();
            hand.tell(() -> look(each, (Control) view.getSite().getService(MPart.class).getWidget()));
        }
        hand.tell(() -> desk.page().hideView(desk.page().findView(Shared.ID + ".view.guide")));
        assertEquals(List.of(), List.copyOf(wrong));
        assertTrue(views.size() >= 9 && seen > views.size(), views.size() + " views, " + seen + " controls");
    }

    @Test
    void everythingInTheDialogsHasAName() throws Exception {
        IProject project = desk.orrin("views");
        desk.open(project.getFile("front-harness.loom"));
        hand.until("the project is looked at", () -> Shared.focus().project().filter(project::equals).isPresent());
        wizard(new NewProjectWizard(), project);
        wizard(new NewDrawingWizard(), project);
        wizard(new ImportWizard(), project);
        command("Print Sheets", "printSheets");
        command("Compare Revisions", "compareRevisions");
        hand.display().asyncExec(() -> PreferencesUtil.createPreferenceDialogOn(null,
                "org.loomwright.workbench.preferences", null, null).open());
        Shell shell = hand.found("the preferences", () -> hand.shell("Preferences"));
        Control page = hand.found("our page", () -> Hand.control(shell, Text.class,
                each -> each.getText().matches("\\d+")).map(Control::getParent));
        hand.tell(() -> look("preferences", page));
        cancel(shell);
        assertEquals(List.of(), List.copyOf(wrong));
        assertTrue(seen > 20, seen + " controls");
    }

    private <W extends Wizard & IWorkbenchWizard> void wizard(W wizard, IProject project) {
        hand.display().asyncExec(() -> {
            wizard.init(PlatformUI.getWorkbench(), new StructuredSelection(project));
            new WizardDialog(hand.display().getActiveShell(), wizard).open();
        });
        Shell shell = hand.found("a wizard", () -> wizard.getContainer() == null ? java.util.Optional.empty()
                : java.util.Optional.ofNullable(wizard.getShell()).filter(Shell::isVisible));
        hand.settle();
        hand.tell(() -> {
            for (var page : wizard.getPages()) {
                if (page.getControl() != null) {
                    look(wizard.getClass().getSimpleName(), page.getControl());
                }
            }
        });
        cancel(shell);
    }

    private void command(String title, String command) {
        hand.display().asyncExec(() -> {
            try {
                PlatformUI.getWorkbench().getService(IHandlerService.class).executeCommand(Shared.ID + "." + command,
                        null);
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        Shell shell = hand.found(title, () -> hand.shell(title));
        hand.tell(() -> look(title, shell));
        cancel(shell);
    }

    private void cancel(Shell shell) {
        hand.click(hand.found("the button that cancels", () -> Hand.control(shell, Button.class,
                each -> each.getText().replace("&", "").equals("Cancel"))));
        hand.until("the dialog is closed", shell::isDisposed);
        hand.front();
    }

    private void look(String where, Control control) {
        if (control instanceof ToolBar bar) {
            for (ToolItem item : bar.getItems()) {
                if ((item.getStyle() & SWT.SEPARATOR) == 0 && item.getText().isBlank()
                        && (item.getToolTipText() == null || item.getToolTipText().isBlank())) {
                    wrong.add(where + ": a button of a tool bar says nothing");
                }
            }
        } else if (used(control)) {
            seen++;
            if (name(control).isBlank()) {
                wrong.add(where + ": " + control.getClass().getSimpleName() + " has no name");
            }
            boolean drawn = control.getClass() == Canvas.class;
            if (drawn && control.isListening(SWT.MouseDown) && !control.isListening(SWT.KeyDown)) {
                wrong.add(where + ": what is drawn hears of the mouse, but not of keys");
            }
        } else if (control instanceof Composite composite) {
            Arrays.stream(composite.getChildren()).forEach(each -> look(where, each));
        }
    }

    /** Whether it can be used; the tree of folders in the wizard for files is the platform's, without a name. */
    private static boolean used(Control control) {
        if (control instanceof Tree && control.getParent().getClass().getName().startsWith("org.eclipse.ui.part.")) {
            return false;
        }
        return control instanceof Button || control instanceof Text || control instanceof StyledText
                || control instanceof Combo || control instanceof Spinner || control instanceof Table
                || control instanceof Tree || control instanceof org.eclipse.swt.widgets.List
                || control.getClass() == Canvas.class && control.isListening(SWT.MouseDown);
    }

    /** The name: what a listener says, else its own text, else the label before it, as the window toolkit has it. */
    private static String name(Control control) {
        AccessibleEvent event = new AccessibleEvent(control.getAccessible());
        listeners(control.getAccessible()).forEach(each -> each.getName(event));
        if (event.result != null) {
            return event.result;
        }
        if (control instanceof Button button) {
            return button.getText().isBlank() && button.getToolTipText() != null ? button.getToolTipText()
                    : button.getText();
        }
        if (control instanceof Text text && (text.getStyle() & SWT.READ_ONLY) != 0 && !text.getText().isBlank()) {
            return text.getText();
        }
        Control[] all = control.getParent().getChildren();
        int at = Arrays.asList(all).indexOf(control);
        return at > 0 && all[at - 1] instanceof Label label ? label.getText() : "";
    }

    /** The toolkit keeps them to itself; a screen reader that could be asked does not run here. */
    private static List<AccessibleListener> listeners(Accessible accessible) {
        try {
            Field field = Accessible.class.getDeclaredField("accessibleListeners");
            field.setAccessible(true);
            List<AccessibleListener> listeners = new ArrayList<>();
            if (field.get(accessible) instanceof Collection<?> all) {
                all.forEach(each -> listeners.add((AccessibleListener) each));
            }
            return listeners;
        } catch (ReflectiveOperationException e) {
            throw new AssertionError("the window toolkit keeps its listeners elsewhere", e);
        }
    }
}
