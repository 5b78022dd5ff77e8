// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeSet;
import org.eclipse.core.commands.Command;
import org.eclipse.core.commands.Parameterization;
import org.eclipse.core.commands.ParameterizedCommand;
import org.eclipse.core.resources.IProject;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Table;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.commands.ICommandService;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.keys.IBindingService;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The commands and keys that users of the platform expect, in the editor for drawings. */
class CommandsTest {

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();
    private ITextEditor editor;
    private ITextViewer viewer;
    private IDocument document;

    @BeforeEach
    void open() throws Exception {
        IProject project = desk.orrin("views");
        editor = desk.open(project.getFile("front-harness.loom"));
        viewer = hand.ask(() -> editor.getAdapter(ITextViewer.class));
        document = hand.ask(viewer::getDocument);
    }

    @AfterEach
    void close() {
        desk.closeAll();
    }

    private void cursor(int offset) {
        hand.tell(() -> {
            editor.getSite().getPage().activate(editor);
            editor.selectAndReveal(offset, 0);
            viewer.getTextWidget().setFocus();
        });
        hand.until("the editor has the keys", () -> viewer.getTextWidget().isFocusControl());
    }

    /**
     * Keys as the user guides of Eclipse list them (Workbench User Guide, List of Key Bindings; Java Development User
     * Guide for those of a language): rename, format, references, show in, save.
     */
    @Test
    @Tag("outside")
    void theKeysAreThoseOfThePlatform() {
        cursor(0);
        Map<String, String> expected = Map.of(
                Shared.ID + ".rename", "Shift+Alt+R",
                Shared.ID + ".format", "Shift+Ctrl+F",
                Shared.ID + ".references", "Shift+Ctrl+G",
                "org.eclipse.ui.navigate.showInQuickMenu", "Shift+Alt+W",
                "org.eclipse.ui.file.save", "Ctrl+S");
        IBindingService keys = PlatformUI.getWorkbench().getService(IBindingService.class);
        expected.forEach((command, key) -> assertTrue(hand.ask(() -> Arrays.stream(keys.getBindings()).anyMatch(
                each -> each.getParameterizedCommand() != null && each.getParameterizedCommand().getId()
                        .equals(command) && parts(each.getTriggerSequence().format()).equals(parts(key)))),
                command + " has not the key " + key));
    }

    private static TreeSet<String> parts(String key) {
        return new TreeSet<>(Arrays.asList(key.split("\\+")));
    }

    @Test
    void openDeclarationGoesToTheName() {
        String text = hand.ask(document::get);
        cursor(text.indexOf("on bHeadL is") + "on b".length());
        hand.press(0, SWT.F3);
        hand.until("the cursor is at the declaration", () -> viewer.getSelectedRange().x == text.indexOf("bHeadL"));
    }

    @Test
    void referencesAreListedAndLeadToTheirLines() {
        String text = hand.ask(document::get);
        cursor(text.indexOf("bHeadL") + 2);
        hand.press(SWT.CTRL | SWT.SHIFT, 'g');
        Table table = hand.found("the list of references", () -> Hand.control(hand.window(), Table.class,
                each -> each.getColumnCount() == 3 && each.getColumn(0).getText().equals("Place")
                        && each.getItemCount() > 1));
        assertEquals("declared", hand.ask(() -> Arrays.stream(table.getItems()).filter(each -> each.getText(2)
                .startsWith("branch bHeadL")).findFirst().orElseThrow().getText(1)));
        int used = hand.ask(() -> Arrays.asList(Arrays.stream(table.getItems()).map(each -> each.getText(1))
                .toArray()).lastIndexOf("used"));
        hand.until("the list has the keys", table::isFocusControl);
        hand.press(0, SWT.HOME);
        for (int i = 0; i < used; i++) {
            hand.press(0, SWT.ARROW_DOWN);
        }
        hand.picture("references");
        String place = hand.ask(() -> table.getItem(used).getText(0));
        hand.press(0, SWT.CR);
        hand.until("the line is open", () -> {
            IWorkbenchPage page = editor.getSite().getPage();
            return page.getActivePart() instanceof ITextEditor open && open.getSelectionProvider().getSelection()
                    instanceof org.eclipse.jface.text.ITextSelection chosen && chosen.getText().equals("bHeadL")
                    && place.equals(open.getEditorInput().getName() + ":" + (chosen.getStartLine() + 1));
        });
    }

    @Test
    void formatBringsLinesIntoTheirUsualForm() {
        String before = hand.ask(document::get);
        int at = before.indexOf("    branch bHeadL");
        hand.tell(() -> {
            try {
                document.replace(at, 4, "          ");
            } catch (org.eclipse.jface.text.BadLocationException e) {
                throw new IllegalStateException(e);
            }
        });
        cursor(0);
        hand.press(SWT.CTRL | SWT.SHIFT, 'f');
        hand.until("the line is as it was", () -> document.get().contains("\n    branch bHeadL"));
        hand.tell(() -> editor.doRevertToSaved());
    }

    @Test
    void showInBringsTheViewsForward() throws Exception {
        String text = hand.ask(document::get);
        cursor(text.indexOf("circuit 17 ") + 8);
        IWorkbenchPage page = editor.getSite().getPage();
        Command command = PlatformUI.getWorkbench().getService(ICommandService.class)
                .getCommand("org.eclipse.ui.navigate.showIn");
        for (String view : new String[] {"harness", "formboard", "circuit"}) {
            cursor(text.indexOf("circuit 17 ") + 8);
            hand.tell(() -> {
                try {
                    PlatformUI.getWorkbench().getService(IHandlerService.class).executeCommand(
                            new ParameterizedCommand(command, new Parameterization[] {new Parameterization(
                                    command.getParameter("org.eclipse.ui.navigate.showIn.targetId"),
                                    Shared.ID + ".view." + view)}), null);
                } catch (Exception e) {
                    throw new IllegalStateException(e);
                }
            });
            hand.until("the view is in front: " + view, () -> page.getActivePart().getSite().getId()
                    .equals(Shared.ID + ".view." + view));
        }
        hand.until("it shows the circuit at the cursor", () -> Hand.control(hand.window(),
                org.eclipse.swt.widgets.Label.class, each -> each.getText().startsWith("Circuit 17, ")).isPresent());
    }
}
