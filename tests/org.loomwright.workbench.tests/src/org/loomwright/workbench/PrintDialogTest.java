// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IncrementalProjectBuilder;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.loomwright.sheets.SheetKind;

/** The dialog that prints: what it takes, what it refuses, and that the files are there afterwards. */
class PrintDialogTest {

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();

    @AfterEach
    void close() {
        desk.closeAll();
    }

    @Test
    void documentsAreChosenWithKeysAndWritten() throws Exception {
        IProject project = desk.empty("printed");
        IFile file = project.getFile("one.loom");
        file.create(new ByteArrayInputStream(SmallHarness.TEXT.getBytes(StandardCharsets.UTF_8)), true, null);
        project.build(IncrementalProjectBuilder.FULL_BUILD, null);
        desk.open(file);
        hand.until("the project is read", () -> Desk.truth(project).isPresent()
                && Shared.focus().project().filter(project::equals).isPresent());
        hand.display().asyncExec(() -> {
            try {
                PlatformUI.getWorkbench().getService(IHandlerService.class).executeCommand(
                        Shared.ID + ".printSheets", null);
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        Shell dialog = hand.found("the dialog", () -> hand.shell("Print Sheets"));
        Table kinds = hand.found("its documents", () -> Hand.control(dialog, Table.class, each -> true));
        Button print = hand.found("its button", () -> Hand.control(dialog, Button.class,
                each -> each.getText().equals("Print")));
        assertTrue(hand.ask(print::isEnabled), "all documents are chosen at first");
        hand.tell(() -> {
            for (TableItem each : kinds.getItems()) {
                each.setChecked(false);
            }
            kinds.setFocus();
            kinds.setSelection(0);
        });
        hand.until("the list has the keys", kinds::isFocusControl);
        int wires = SheetKind.words().indexOf("wire-list");
        hand.press(0, SWT.HOME);
        for (int i = 0; i < wires; i++) {
            hand.press(0, SWT.ARROW_DOWN);
        }
        hand.press(0, ' ');
        hand.until("the wire list is chosen", () -> kinds.getItem(wires).getChecked());
        hand.press(0, ' ');
        hand.until("nothing is chosen, and that is refused", () -> !print.isEnabled());
        hand.press(0, ' ');
        hand.until("it can be printed again", print::isEnabled);
        Button even = hand.found("the box for errors", () -> Hand.control(dialog, Button.class,
                each -> each.getText().startsWith("Print &even")));
        if (!hand.ask(even::getSelection)) {
            hand.click(even, 10, hand.ask(() -> even.getSize().y / 2));
        }
        hand.until("it is checked", even::getSelection);
        hand.picture("print-sheets");
        hand.click(print);
        Path sheets = project.getLocation().toFile().toPath().resolve("sheets");
        hand.until("the list is written", () -> Files.exists(sheets.resolve("one-wire-list.pdf")));
        Shell told = hand.found("what was written is told", () -> hand.shell("Printing the sheets of one")
                .filter(each -> Hand.control(each, Label.class, label -> label.getText().contains(" file"))
                        .isPresent()));
        hand.tell(told::forceActive);
        hand.press(0, SWT.CR);
        hand.until("the message is gone", told::isDisposed);
        assertFalse(Files.exists(sheets.resolve("one-cover.pdf")), "only what was chosen is written");
        assertTrue(Files.exists(sheets.resolve("one-wire-list.csv")), "a list is written for programs, too");
    }
}
